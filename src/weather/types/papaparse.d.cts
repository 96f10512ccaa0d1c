/**
 * The one call the weather folder makes. The published types of the package pull in Node's globals, which the core
 * must not see; `paths` in tsconfig.json points here instead.
 */
interface PapaParse {
  parse(
    text: string,
    config: { readonly delimiter: string; readonly quoteChar: string; readonly newline: string },
  ): {
    readonly data: string[][];
    readonly errors: readonly { readonly row?: number; readonly message: string }[];
  };
}
declare const papaParse: PapaParse;
export = papaParse;
