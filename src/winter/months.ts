import { localText } from "../weather/index.js";

const DAY = 86_400;

const namesOf = new Map<string, (epoch: number) => string>();

/** Names the month of a moment [s since epoch] by the clock of a zone, "2026-01". */
export function monthNames(zone: string): (epoch: number) => string {
  const names = namesOf.get(zone) ?? createMonthNames(zone);
  namesOf.set(zone, names);
  return names;
}

function createMonthNames(zone: string): (epoch: number) => string {
  const nameAt = (epoch: number) => localText(epoch, zone).slice(0, "2026-01".length);
  /** Of whole days in UTC; undefined where two months meet in one. */
  const ofDays = new Map<number, string | undefined>();
  return (epoch) => {
    const day = Math.floor(epoch / DAY);
    if (!ofDays.has(day)) {
      const first = nameAt(day * DAY);
      ofDays.set(day, first === nameAt(day * DAY + DAY - 60) ? first : undefined);
    }
    return ofDays.get(day) ?? nameAt(epoch);
  };
}
