/**
 * The calls the logbook makes. The published types of the package pull in Node's globals, which the core must not see;
 * `paths` in tsconfig.json points here instead.
 */
interface PapaParse {
  parse(
    text: string,
    config: { readonly delimiter: string; readonly skipEmptyLines: "greedy" },
  ): {
    readonly data: string[][];
    readonly errors: readonly { readonly row?: number; readonly message: string }[];
  };
  unparse(rows: readonly (readonly string[])[], config: { readonly newline: string }): string;
}
declare const papaParse: PapaParse;
export = papaParse;
