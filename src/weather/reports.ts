import type { WeatherIssue } from "./series.js";

/** One report cut out of a text, in capitals, with its heading taken apart. */
export interface RawReport {
  readonly kind: "METAR" | "SPECI" | "TAF";
  readonly station: string;
  /** "092350Z" */
  readonly timeGroup: string;
  readonly corrected: boolean;
  readonly amended: boolean;
  /** Groups after the time of the report. */
  readonly groups: readonly string[];
}

const KINDS = ["METAR", "SPECI", "TAF"] as const;
const STATION = /^[A-Z][A-Z0-9]{3}$/;
const TIME_GROUP = /^\d{6}Z$/;
const VALIDITY = /^\d{4}\/\d{4}$/;
/** Abbreviated heading of a bulletin (WMO-No. 386): data type, place, day and time without Z. */
const BULLETIN_HEADING = /\b[A-Z]{4}\d{2} [A-Z]{4} \d{6}(?: [A-Z]{3})?\b/g;

/**
 * Cuts a text into METAR, SPECI and TAF reports: line breaks and repeated spaces do not matter, "=" ends a report,
 * the word METAR or TAF may be missing or stand once for several stations. Lines beginning with # are comments.
 */
export function splitReports(text: string): { reports: RawReport[]; issues: WeatherIssue[] } {
  const tokens = tokensOf(text);
  const reports: RawReport[] = [];
  const issues: WeatherIssue[] = [];
  const ignored: string[] = [];
  let i = 0;
  while (i < tokens.length) {
    if (!startsReport(tokens, i)) {
      if (tokens[i] !== "=") ignored.push(tokens[i]!);
      i++;
      continue;
    }
    const heading = headingAt(tokens, i);
    let end = heading.next;
    while (end < tokens.length && tokens[end] !== "=" && !startsReport(tokens, end)) end++;
    const report = reportOf(heading, tokens.slice(heading.next, end), issues);
    if (report !== undefined) reports.push(report);
    i = end;
  }
  if (ignored.length > 0) {
    issues.push({
      place: "text outside reports",
      expected: "METAR, SPECI or TAF, or a station and a time such as XXRV 092350Z",
      received: ignored.slice(0, 12).join(" "),
    });
  }
  return { reports, issues };
}

/** The report as one line, in the order the parser expects. */
export function reportText(report: RawReport): string {
  const flags = [report.amended ? "AMD" : "", report.corrected ? "COR" : ""].filter((flag) => flag !== "");
  return [report.kind, ...flags, report.station, report.timeGroup, ...report.groups].join(" ");
}

interface Heading {
  readonly words: readonly string[];
  readonly station: string | undefined;
  readonly timeGroup: string | undefined;
  /** Index of the first group after the heading. */
  readonly next: number;
}

function tokensOf(text: string): string[] {
  return text
    .replace(/^\s*#.*$/gm, " ")
    .toUpperCase()
    .replace(/[^\x20-\x7e]+/g, " ")
    .replace(/ +/g, " ")
    .replace(BULLETIN_HEADING, " ")
    .replaceAll("=", " = ")
    .split(" ")
    .filter((token) => token !== "");
}

function startsReport(tokens: readonly string[], i: number): boolean {
  if (isKind(tokens[i])) return true;
  return STATION.test(tokens[i] ?? "") && TIME_GROUP.test(tokens[i + 1] ?? "");
}

function headingAt(tokens: readonly string[], start: number): Heading {
  let i = start;
  const words: string[] = [];
  while (isKind(tokens[i]) || tokens[i] === "AMD" || tokens[i] === "COR") words.push(tokens[i++]!);
  const station = STATION.test(tokens[i] ?? "") ? tokens[i++] : undefined;
  const timeGroup = TIME_GROUP.test(tokens[i] ?? "") ? tokens[i++] : undefined;
  while (timeGroup !== undefined && (tokens[i] === "AMD" || tokens[i] === "COR")) words.push(tokens[i++]!);
  return { words, station, timeGroup, next: i };
}

function reportOf(heading: Heading, groups: string[], issues: WeatherIssue[]): RawReport | undefined {
  const { words, station, timeGroup } = heading;
  if (station === undefined && groups.length === 0) return undefined; // a lone "METAR" above a list of stations
  if (station === undefined || timeGroup === undefined) {
    issues.push({
      place: `report ${[...words, station ?? ""].join(" ").trim()}`,
      expected: "a station and the time of the report, such as XXRV 092350Z",
      received: groups.slice(0, 4).join(" ") || "nothing",
    });
    return undefined;
  }
  const kind = words.find(isKind) ?? (VALIDITY.test(groups[0] ?? "") ? "TAF" : "METAR");
  return {
    kind,
    station,
    timeGroup,
    corrected: words.includes("COR"),
    amended: words.includes("AMD"),
    groups,
  };
}

function isKind(token: string | undefined): token is RawReport["kind"] {
  return KINDS.some((kind) => kind === token);
}
