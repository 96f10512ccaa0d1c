import { type Finding, finding } from "../findings/index.js";
import type { Oil } from "../properties/index.js";
import { celsiusFromFahrenheit, celsiusFromKelvin, kelvinFromCelsius } from "../units/index.js";
import { requireOutsideAir } from "./outside-air.js";

/** One row of the maker's table of grades against average outside air. */
interface OilGradeRow {
  /** [K] */
  readonly coldest: number;
  readonly warmest: number;
  /** SAE grades of straight mineral oil (SAE J1966). */
  readonly mineral: readonly string[];
  /** SAE grades of ashless dispersant oil (SAE J1899). */
  readonly dispersant: readonly string[];
}

const OIL_GRADE_SOURCE =
  "Lycoming Service Instruction 1014M (22 May 1995), as an example: your engine maker's current table decides";

/** Rows of Lycoming SI 1014M (1995), average ambient temperatures in °F. */
const OIL_GRADES: readonly OilGradeRow[] = [
  row(undefined, undefined, [], ["15W-50", "20W-50"]),
  row(80, undefined, ["60"], ["60"]),
  row(60, undefined, ["50"], ["40", "50"]),
  row(30, 90, ["40"], ["40"]),
  row(0, 70, ["30"], ["30", "40", "20W-40"]),
  row(0, 90, ["20W-50"], ["20W-50", "15W-50"]),
  row(undefined, 10, ["20"], ["30", "20W-30"]),
];

export interface OilGradeAdvice {
  /** Whether the installed oil's grade is among those that the table lists for this air, as either kind. */
  readonly listed: boolean;
  /** Grades of ashless dispersant oil the table lists for this air, without repeats. */
  readonly dispersant: readonly string[];
  /** Of the installed oil, such as 15W-50. */
  readonly grade: string;
  readonly text: Finding;
  readonly source: string;
}

/** What the published table says about an oil at `tempAir` [K], average of the coming days; information, not a verdict. */
export function oilGradeAdvice(oil: Pick<Oil, "winterGrade" | "hotGrade">, tempAir: number): OilGradeAdvice {
  requireOutsideAir(tempAir);
  const rows = OIL_GRADES.filter((r) => tempAir >= r.coldest && tempAir <= r.warmest);
  const dispersant = [...new Set(rows.flatMap((r) => r.dispersant))];
  const grade = oil.winterGrade === undefined ? oil.hotGrade : `${oil.winterGrade}-${oil.hotGrade}`;
  const listed = dispersant.includes(grade) || rows.some((r) => r.mineral.includes(grade));
  const at = { grade, temp_c: celsiusFromKelvin(tempAir) };
  return {
    listed,
    dispersant,
    grade,
    text: listed
      ? finding("oil-grade-listed", at)
      : finding("oil-grade-unlisted", { ...at, listed: dispersant }),
    source: OIL_GRADE_SOURCE,
  };
}

/** Ends in °F; absent: open. */
function row(
  coldest: number | undefined,
  warmest: number | undefined,
  mineral: readonly string[],
  dispersant: readonly string[],
): OilGradeRow {
  const kelvin = (f: number) => kelvinFromCelsius(celsiusFromFahrenheit(f));
  return {
    coldest: coldest === undefined ? 0 : kelvin(coldest),
    warmest: warmest === undefined ? Number.POSITIVE_INFINITY : kelvin(warmest),
    mineral,
    dispersant,
  };
}
