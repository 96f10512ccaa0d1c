/** One published table of freezing point against specific gravity. */
export interface FreezingTable {
  readonly source: string;
  /** Specific gravity at 80 °F, freezing point [°F]. */
  readonly points: readonly (readonly [gravity: number, fahrenheit: number])[];
  /** [K] by which the kept curve is at most warmer than this table. */
  readonly allowance: number;
}

export const FREEZING_TABLES: readonly FreezingTable[] = [
  {
    source: "US Army TM 5-4210-230-14&P-1 Table 2",
    points: [
      [1.265, -75],
      [1.225, -35],
      [1.19, -15],
      [1.155, 5],
      [1.12, 15],
    ],
    allowance: 2.5,
  },
  {
    source: "US Army TM 5-1185 Table III",
    points: [
      [1.28, -90],
      [1.25, -62],
      [1.2, -16],
      [1.15, 5],
      [1.1, 19],
    ],
    allowance: 3,
  },
  {
    source: "US Army TM 10-6140-200-14 Table 1-1",
    points: [
      [1.28, -95],
      [1.25, -62],
      [1.22, -31],
      [1.16, 1],
    ],
    allowance: 6,
  },
  {
    source: "owner's manual table, publications.polaris.com",
    points: [
      [1.265, -75],
      [1.225, -35],
      [1.2, -17],
      [1.15, 5],
      [1.1, 18],
      [1.05, 27],
    ],
    allowance: 2.5,
  },
  {
    source: "volvo850.ru, -65, -28, -7 °C",
    points: [
      [1.28, -85],
      [1.2, -18.4],
      [1.1, 19.4],
    ],
    allowance: 1.5,
  },
  {
    source: "logwell.com by state of charge, through the charge table",
    points: [
      [1.265, -71],
      [1.225, -33],
      [1.19, -15],
      [1.155, 4],
    ],
    allowance: 2,
  },
];

/** The column printed beside the charge table, far colder at low charge than all others: never to be relied on. */
export const FREEZING_TABLE_OPTIMISTIC = [
  [1.265, -75],
  [1.225, -55],
  [1.19, -34],
  [1.155, -16],
  [1.12, -10],
] as const;
