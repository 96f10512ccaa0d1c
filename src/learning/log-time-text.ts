/** Order of the parts of dates as a file writes them. */
export type DateOrder = "day-first" | "month-first";

const DATE = /(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})|(\d{1,2})([-/.])(\d{1,2})[-/.](\d{4}|\d{2})/;
const CLOCK =
  /(\d{1,2})[:.h](\d{2})(?:[:.](\d{2})(?:[.,](\d+))?)?\s*([ap]\.?m\.?)?\s*(Z|UTC|GMT|[+-]\d{2}:?\d{2})?/;
const DATE_ALONE = new RegExp(`^(?:${DATE.source})\\.?$`);
const CLOCK_ALONE = new RegExp(`^${CLOCK.source}$`, "i");
const BOTH = new RegExp(`^(?:${DATE.source})[T,\\s]+${CLOCK.source}$`, "i");
/** Seconds of the years 1973 to 2286, and the same in milliseconds. */
const EPOCH = /^(\d{9,10})(?:[.,](\d+))?$|^(\d{12,13})(?:[.,]\d+)?$/;

/** What a cell of a time column holds. */
export function kindOfTimeText(cell: string): "time" | "date" | "clock" | undefined {
  const text = cell.trim();
  if (BOTH.test(text) || EPOCH.test(text)) return "time";
  if (DATE_ALONE.test(text)) return "date";
  return CLOCK_ALONE.test(text) ? "clock" : undefined;
}

/** [s] since 1970 of a cell that holds just this number, in seconds or milliseconds. */
export function epochOfNumber(text: string): number | undefined {
  const match = EPOCH.exec(text);
  if (match === null) return undefined;
  const [, seconds, fraction = "", milliseconds] = match;
  return seconds === undefined ? Number(milliseconds) / 1000 : Number(`${seconds}.${fraction}0`);
}

/**
 * The order that the dates of a column show: a first part above 12 is a day, a second one too. "day-first" also where
 * points stand between, as no country writes the month first with points. Undefined where every date can be read both ways.
 */
export function dateOrderOf(texts: Iterable<string>): DateOrder | undefined {
  for (const text of texts) {
    const match = DATE.exec(text);
    if (match === null) continue;
    if (match[1] !== undefined) return "day-first";
    if (match[5] === "." || Number(match[4]) > 12) return "day-first";
    if (Number(match[6]) > 12) return "month-first";
  }
  return undefined;
}

/** The same date and time as ISO 8601 writes them; undefined where the text is none. */
export function isoOf(text: string, order: DateOrder): string | undefined {
  const match = BOTH.exec(text);
  if (match === null) return undefined;
  const [
    ,
    year,
    month,
    day,
    first,
    ,
    second,
    shortYear,
    hour,
    minute,
    sec = "00",
    fraction,
    half,
    offset = "",
  ] = match;
  const date =
    year !== undefined
      ? [year, month, day]
      : [
          shortYear.length === 2 ? `20${shortYear}` : shortYear,
          ...(order === "day-first" ? [second, first] : [first, second]),
        ];
  const clock = [hourOf(Number(hour), half), minute, sec].map(padded).join(":");
  const part = fraction === undefined ? "" : `.${fraction}`;
  return `${date.map(padded).join("-")}T${clock}${part}${/^(?:utc|gmt)$/i.test(offset) ? "Z" : offset}`;
}

function hourOf(hour: number, half: string | undefined): string {
  if (half === undefined) return String(hour);
  // 12 am is midnight; an hour that no such clock shows is spoilt so that it is refused.
  if (hour < 1 || hour > 12) return "99";
  return String((hour % 12) + (half[0].toLowerCase() === "p" ? 12 : 0));
}

function padded(value: string): string {
  return value.padStart(2, "0");
}
