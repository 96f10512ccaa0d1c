import type { FaceDocument, FrostOutlookDocument } from "../../index.js";
import type { Style } from "../style.js";
import { type Column, hourlyRows, mass, massValue, tenths, timeBandText } from "./airframe-text.js";
import { frostOpening, frostWords, HARDLY_SEEN, verdictWords } from "./frost-opening.js";
import { screen } from "./opening.js";
import { bareWind, clock, closing, fact, unitOf, windUnit } from "./words.js";

/** Frost by a departure, for a pilot: the first screen; behind it each face, what a cover does, and the night by the hour. */
export function frostText(outlook: FrostOutlookDocument, style: Style): string[] {
  return screen(frostOpening(outlook, style), () => whole(outlook, style), style);
}

function whole(outlook: FrostOutlookDocument, style: Style): string[] {
  return [
    ...faceFacts("Upper skin", outlook.upper, outlook, style),
    ...faceFacts("Lower skin", outlook.lower, outlook, style),
    ...coverFacts(outlook, style),
    "",
    ...nightTable(outlook, style),
    ...closing(outlook, style),
  ];
}

function faceFacts(
  label: string,
  face: FaceDocument,
  { departure, members }: FrostOutlookDocument,
  style: Style,
): string[] {
  const { verdict, chance, chance_at_departure, first, hours, frost_at_departure_kg_per_m2: frost } = face;
  const by = clock(departure, departure);
  const counted = (share: number) => style.values.risk({ share: share, members });
  const dew = face.dew_at_departure_kg_per_m2;
  const below = face.most_below_air_k;
  const said = verdictWords(verdict);
  const lasting = hours.p50 < 0.05 ? "up to " : `${hours.p50.toFixed(1)} h, up to `;
  return [
    ...fact(
      label,
      `${said}, ${counted(chance)}; still there at ${by}: ${counted(chance_at_departure)}`,
      style,
    ),
    ...(chance === 0
      ? []
      : [
          ...fact("  first", timeBandText(first, departure, `not by ${by}`), style),
          ...fact("  lasts", `${lasting}${hours.p95.toFixed(1)} h in the worst 1 in 20 cases`, style),
          ...fact(
            `  at ${by}`,
            `${frostWords(frost.p50)}, ${mass(frost.p50)} or mm of water (${massValue(frost.p05)} to ${massValue(frost.p95)})`,
            style,
          ),
        ]),
    ...(dew.p95 >= HARDLY_SEEN
      ? fact("  dew", `${mass(dew.p50)} (${massValue(dew.p05)} to ${massValue(dew.p95)}) at ${by}`, style)
      : []),
    ...fact(
      "  coldest",
      `${style.values.difference(below.p50)} below the air (${style.values.difference(below.p05)} to ${style.values.difference(below.p95)})`,
      style,
    ),
  ];
}

function coverFacts(outlook: FrostOutlookDocument, style: Style): string[] {
  const { cover, other, upper, members, departure } = outlook;
  const tell = (face: FaceDocument) =>
    `${verdictWords(face.verdict)}, ${style.values.risk({ share: face.chance, members })}, ${mass(face.frost_at_departure_kg_per_m2.p50)}`;
  const [covered, bare] = cover === null ? [other.upper, upper] : [upper, other.upper];
  const kind = cover === null ? ` (${other.cover}, tried)` : "";
  const onCover = outlook.course.cover_frost_kg_per_m2?.p50.at(-1);
  return [
    ...fact("Wing cover", `with${kind}: upper skin ${tell(covered)}; without: ${tell(bare)}`, style),
    ...(onCover === undefined
      ? []
      : fact("", `on the cover itself ${mass(onCover)} at ${clock(departure, departure)}`, style)),
  ];
}

function nightTable({ course, start, zone }: FrostOutlookDocument, style: Style): string[] {
  const celsius = (heading: string, width: number, { p50 }: { p50: readonly number[] }): Column => ({
    heading,
    width,
    cells: p50.map((value) => tenths(value, style)),
  });
  const kilograms = (heading: string, { p50 }: { p50: readonly number[] }): Column => ({
    heading,
    width: 9,
    cells: p50.map(massValue),
  });
  const columns = [
    celsius("air", 7, course.air_c),
    celsius("frost pt", 10, course.frost_point_c),
    celsius("sky", 7, course.sky_c),
    { heading: "wind", width: 6, cells: course.wind_mps.p50.map((wind) => bareWind(wind, style, 1)) },
    celsius("upper", 8, course.upper_c),
    celsius("lower", 7, course.lower_c),
    kilograms("frost up", course.upper_frost_kg_per_m2),
    kilograms("under", course.lower_frost_kg_per_m2),
  ];
  return [
    `Medians in ${unitOf("c", style)}, ${windUnit(style)} at the wing, kg/m² (mm of water)`,
    ...hourlyRows(course.time_h, start, zone, columns, style),
  ];
}
