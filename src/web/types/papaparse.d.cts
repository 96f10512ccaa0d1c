/** What the core calls of the package, for checking it along with the app; its own folders declare the same more narrowly. */
interface PapaParse {
  parse(
    text: string,
    config: {
      readonly delimiter: string;
      readonly quoteChar?: string;
      readonly newline?: string;
      readonly skipEmptyLines?: "greedy";
    },
  ): {
    readonly data: string[][];
    readonly errors: readonly { readonly row?: number; readonly message: string }[];
  };
  unparse(rows: readonly (readonly string[])[], config: { readonly newline: string }): string;
}
declare const papaParse: PapaParse;
export = papaParse;
