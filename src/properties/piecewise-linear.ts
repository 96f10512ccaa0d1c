/** Points of a published table, x strictly ascending. */
export type Table = readonly (readonly [x: number, y: number])[];

/**
 * y at `x`, linear between neighbouring points, so monotone wherever the table is. Outside the table the end values
 * hold: callers refuse what lies outside the range they vouch for.
 */
export function interpolateTable(table: Table, x: number): number {
  let [lowX, lowY] = table[0]!;
  if (!(x > lowX)) return lowY;
  for (const [highX, highY] of table) {
    if (x <= highX) return highX === lowX ? highY : lowY + ((highY - lowY) * (x - lowX)) / (highX - lowX);
    lowX = highX;
    lowY = highY;
  }
  return lowY;
}
