import { kelvinFromCelsius, requirePositive } from "../units/index.js";

export type WinterGrade = "0W" | "5W" | "10W" | "15W" | "20W" | "25W";
export type HotGrade = "16" | "20" | "30" | "40" | "50" | "60";

/** What an oil must pass to carry a winter grade. */
export interface WinterLimits {
  /** [K] temperature of the cranking test, ASTM D5293 (high shear) */
  readonly tempCranking: number;
  /** [Pa s] most it may be there */
  readonly viscosityCranking: number;
}

/** [Pa s] most an oil may be in the pumping test, all winter grades (SAE J300, ASTM D4684). */
export const VISCOSITY_PUMPING_LIMIT = 60;

/** SAE J300 winter grades (limits of 2013 and later; unchanged in J300_202104), coldest first. */
export const SAE_J300_WINTER: Readonly<Record<WinterGrade, WinterLimits>> = {
  "0W": winter(-35, 6.2),
  "5W": winter(-30, 6.6),
  "10W": winter(-25, 7.0),
  "15W": winter(-20, 7.0),
  "20W": winter(-15, 9.5),
  "25W": winter(-10, 13.0),
};

/**
 * Cranking limit between the rows of SAE J300 [Pa s], linear in temperature, level outside -35 to -10 °C. The
 * standard itself sets limits only at the rows; reading between them, to judge a straight grade by what J300
 * lets an engine crank at that temperature, is project judgement.
 * @param temp [K]
 * @example crankingLimitBetweenGrades(258.15) // 9.5 (row 20W)
 */
export function crankingLimitBetweenGrades(temp: number): number {
  requirePositive("temp", temp, "K");
  const rows = Object.values(SAE_J300_WINTER);
  const above = rows.findIndex((row) => row.tempCranking >= temp);
  if (above < 0) return rows.at(-1)!.viscosityCranking;
  if (above === 0) return rows[0]!.viscosityCranking;
  const cold = rows[above - 1]!;
  const warm = rows[above]!;
  const fraction = (temp - cold.tempCranking) / (warm.tempCranking - cold.tempCranking);
  return cold.viscosityCranking + fraction * (warm.viscosityCranking - cold.viscosityCranking);
}

function winter(celsius: number, viscosityCranking: number): WinterLimits {
  return { tempCranking: kelvinFromCelsius(celsius), viscosityCranking };
}
