import type { LogbookEvent } from "../../../logbook/index.js";
import type { Said, Words } from "../../words/index.svelte.js";
import type { BaseView } from "../../worker/protocol.js";

/** One entry of the logbook in plain words. */
export function entryWords(event: LogbookEvent, view: BaseView | undefined, w: Words, say: Said): string {
  const k = w.logbook.kinds;
  const aircraft = "aircraft" in event ? view?.aircraft.find(({ id }) => id === event.aircraft) : undefined;
  const who = aircraft?.name ?? ("aircraft" in event ? (event.aircraft ?? "") : "");
  const named = (ids: readonly string[]) =>
    ids
      .map(
        (id) =>
          [...(aircraft?.heaters ?? []), ...(aircraft?.covers ?? [])].find((each) => each.id === id)?.name ??
          id,
      )
      .join(", ");
  const partName = (part: string) => (w.parts as Readonly<Record<string, string>>)[part] ?? part;
  switch (event.kind) {
    case "plugged-in":
    case "unplugged":
      return k[event.kind](who, named(event.heaters));
    case "cover-on":
    case "cover-off":
      return k[event.kind](who, named(event.covers));
    case "moved":
      return k.moved(who, event.to === "ramp" ? w.logbook.ramp : w.logbook.hangar);
    case "shut-down":
      return k["shut-down"](who);
    case "started":
      return k.started(who, w.aircraft[event.how]);
    case "reading":
      return k.reading(who, `${partName(event.part)} ${say.temp(event.temp_c)}`);
    case "departure-wanted":
      return k["departure-wanted"](who, `${say.day(event.departure)} ${say.bareClock(event.departure)}`);
    case "departure-dropped":
      return k["departure-dropped"](who);
    case "set-up":
      return k["set-up"](event.base.name);
    case "forecast":
      return k.forecast(event.origin);
    case "note":
      return k.note(event.note ?? "");
    case "plan-issued":
      return k["plan-issued"](who, say.told(event.message));
    case "plan-withdrawn":
      return k["plan-withdrawn"](who);
    case "probes-read":
      return k["probes-read"](
        who,
        event.readings.map(({ part, temp_c }) => `${partName(part)} ${say.temp(temp_c)}`).join(", "),
      );
    case "switch-commanded":
      return k.switched(who, `${event.switch} → ${event.to}`);
    case "switch-confirmed":
      return k.switched(who, `${event.switch} = ${event.is}`);
    case "fault":
      return k.fault(say.told(event.text));
    case "fault-cleared":
      return k["fault-cleared"];
    case "correction":
      return w.logbook.correct;
  }
}
