import {
  type IAbstractValidity,
  type ITAF,
  parseTAF,
  type TAFTrend,
  WeatherChangeType,
} from "metar-taf-parser";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { cloudOfGroups, isBelievableAir, kelvinOfGroup, windOfGroups } from "./groups.js";
import { type RawReport, reportText } from "./reports.js";
import type { WeatherIssue } from "./series.js";
import type { TafChange, TafConditions, TafReport, TempPoint } from "./taf-report.js";
import { epochNear, requireEpoch } from "./time.js";

/** Longest validity of a TAF in use (WMO-No. 306 Volume I.1, FM 51: 9, 24 or 30 h; an hour or two before it begins allowed for). */
const LONGEST_VALIDITY = 36 * SECONDS_OF_HOUR;
const CHANGE_START = /^(?:FM\d+|BECMG|TEMPO|INTER|PROB\d+)$/;
const EXTREME = /^(TX|TN)(M?\d{2})\/(\d{2})(\d{2})Z$/;
const EXTREME_LIKE = /^T[XN](?:M|\d)/;

/** The TAFs among raw reports, oldest issue first and of one issue the later in the text last; faults go to `issues`. */
export function tafsOf(
  reports: readonly RawReport[],
  reference: number,
  issues: WeatherIssue[],
): TafReport[] {
  requireEpoch("reference", reference);
  return reports
    .filter((report) => report.kind === "TAF")
    .map((report) => decode(report, reference, issues))
    .filter((report) => report !== undefined)
    .sort((a, b) => a.issued - b.issued);
}

function decode(raw: RawReport, reference: number, issues: WeatherIssue[]): TafReport | undefined {
  const name = `TAF ${raw.station} ${raw.timeGroup}`;
  const refuse = (expected: string, received: string) => {
    issues.push({ place: name, expected, received });
    return undefined;
  };
  const [day, hour, minute] = [0, 2, 4].map((at) => Number(raw.timeGroup.slice(at, at + 2)));
  const issued = hour! < 24 ? epochNear(day!, hour!, minute!, reference) : undefined;
  if (issued === undefined) return refuse("day, hour and minute such as 091700Z", raw.timeGroup);
  for (const word of ["NIL", "CNL"]) if (raw.groups.includes(word)) return refuse("a forecast", word);
  const text = reportText(raw);
  const validityGroup = raw.groups[0] ?? "nothing";
  if (!/^\d{4}\/\d{4}$/.test(validityGroup)) return refuse("validity such as 0918/1018", validityGroup);
  const taf = parsed(text, issued);
  if (taf === undefined) return refuse("a TAF in the form of FM 51", text.slice(0, 60));
  const span = validity(taf.validity, issued);
  if (span === undefined || !(span.from < span.to && span.to - span.from <= LONGEST_VALIDITY)) {
    return refuse("validity such as 0918/1018, of at most 36 h", validityGroup);
  }
  const groups = withoutRemarks(raw.groups);
  const firstChange = groups.findIndex((group) => CHANGE_START.test(group));
  const base = conditionsOf(firstChange < 0 ? groups : groups.slice(0, firstChange));
  return {
    station: raw.station,
    issued,
    ...span,
    amended: raw.amended,
    corrected: raw.corrected,
    base,
    changes: changesOf(taf, groups, { ...span, issued }, name, issues),
    ...extremesOf(groups, issued, name, issues),
    text,
  };
}

function changesOf(
  taf: ITAF,
  groups: readonly string[],
  span: { issued: number; from: number; to: number },
  name: string,
  issues: WeatherIssue[],
): TafChange[] {
  const changes: TafChange[] = [];
  for (const trend of taf.trends) {
    const change = changeOf(trend, span);
    if (change !== undefined) changes.push(change);
    else
      issues.push({
        place: `${name}, ${trend.raw}`,
        expected: "a period inside the validity",
        received: trend.raw,
      });
  }
  // The library drops a change group whose period it cannot read, so the groups are counted against what came back.
  const written = groups.filter((group, i) => {
    const continuesProb = (group === "TEMPO" || group === "INTER") && /^PROB\d+$/.test(groups[i - 1] ?? "");
    return CHANGE_START.test(group) && !continuesProb;
  }).length;
  if (written > taf.trends.length) {
    issues.push({
      place: name,
      expected: `${written} change groups with periods such as 0920/0922`,
      received: `${taf.trends.length} that can be read`,
    });
  }
  return changes.sort((a, b) => a.from - b.from);
}

function changeOf(
  trend: TAFTrend,
  span: { issued: number; from: number; to: number },
): TafChange | undefined {
  const conditions = conditionsOf(withoutRemarks(trend.raw.split(" ")));
  const common = { conditions, probability: trend.probability, text: trend.raw };
  if (trend.type === WeatherChangeType.FM) {
    const { startDay, startHour, startMinutes } = trend.validity;
    const from = epochNear(startDay, startHour, startMinutes ?? 0, span.issued);
    if (from === undefined || from < span.from || from > span.to) return undefined;
    return { ...common, kind: "FM", from, to: span.to };
  }
  const period = validity(trend.validity, span.issued);
  if (period === undefined || period.from < span.from || period.to > span.to || period.from > period.to) {
    return undefined;
  }
  return { ...common, kind: kindOf(trend.type), ...period };
}

function kindOf(type: WeatherChangeType): TafChange["kind"] {
  if (type === WeatherChangeType.BECMG) return "BECMG";
  return type === WeatherChangeType.PROB ? "PROB" : "TEMPO";
}

function extremesOf(
  groups: readonly string[],
  issued: number,
  name: string,
  issues: WeatherIssue[],
): { lows: TempPoint[]; highs: TempPoint[] } {
  // Read here because the library keeps only the last TX and the last TN of a TAF.
  const points = { TN: [] as TempPoint[], TX: [] as TempPoint[] };
  for (const group of groups) {
    const match = EXTREME.exec(group);
    const time = match === null ? undefined : epochNear(Number(match[3]), Number(match[4]), 0, issued);
    const tempAir = match === null ? Number.NaN : kelvinOfGroup(match[2]!);
    if (time !== undefined && isBelievableAir(tempAir)) {
      points[match![1] as "TN" | "TX"].push({ time, tempAir });
    } else if (EXTREME_LIKE.test(group)) {
      issues.push({
        place: `${name}, group ${group}`,
        expected: "a group such as TNM27/1004Z",
        received: group,
      });
    }
  }
  const inTime = (a: TempPoint, b: TempPoint) => a.time - b.time;
  return { lows: points.TN.sort(inTime), highs: points.TX.sort(inTime) };
}

function validity(
  group: IAbstractValidity & { endDay?: number; endHour?: number },
  issued: number,
): { from: number; to: number } | undefined {
  const from = epochNear(group.startDay, group.startHour, 0, issued);
  const to = epochNear(group.endDay ?? Number.NaN, group.endHour ?? Number.NaN, 0, issued);
  return from === undefined || to === undefined ? undefined : { from, to };
}

function conditionsOf(groups: readonly string[]): TafConditions {
  return { windSpeed: windOfGroups(groups), cloudCover: cloudOfGroups(groups) };
}

function withoutRemarks(groups: readonly string[]): readonly string[] {
  const remarks = groups.indexOf("RMK");
  return remarks < 0 ? groups : groups.slice(0, remarks);
}

function parsed(text: string, issued: number): ITAF | undefined {
  try {
    return parseTAF(text, { issued: new Date(issued * 1000) });
  } catch {
    return undefined;
  }
}
