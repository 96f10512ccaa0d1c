/**
 * JSON with the keys of every object in order: two values are the same when their texts are, whoever wrote them.
 * @example canonicalText({ b: 1, a: [2] }) // '{"a":[2],"b":1}'
 */
export function canonicalText(value: unknown): string {
  return JSON.stringify(value, (_, entry: unknown) =>
    typeof entry === "object" && entry !== null && !Array.isArray(entry)
      ? Object.fromEntries(Object.entries(entry).sort(([a], [b]) => (a < b ? -1 : 1)))
      : entry,
  );
}
