import { checkedPlans } from "./checked-plans.js";
import type { PlainEvent } from "./corrections.js";
import { foldDepartures } from "./derive-departures.js";
import { openFaults } from "./derive-faults.js";
import type { BaseAircraft } from "./set-up.js";
import type { AircraftState, Anchor, Change, SwitchStanding } from "./state.js";

export interface DerivingContext {
  readonly cleared: ReadonlySet<string>;
  readonly nameNow: (id: string) => string;
  /** Notes an event that says something of what is not there. */
  readonly lost: (id: string, reason: string) => void;
}

/**
 * One aircraft from its own events, oldest first. At `known.at` the set-up's word replaces what was derived of place,
 * covers and temperatures; what is plugged in and switched on goes on, because the set-up does not say it.
 */
export function deriveAircraft(
  setUp: BaseAircraft,
  events: readonly PlainEvent[],
  context: DerivingContext,
): AircraftState {
  const knownAt = Date.parse(setUp.known.at);
  const course = new Course(setUp, context.lost);
  const before = events.findIndex((event) => Date.parse(event.at) >= knownAt);
  const cut = before === -1 ? events.length : before;
  for (const event of events.slice(0, cut)) course.take(event);
  course.takeKnown();
  for (const event of events.slice(cut)) course.take(event);

  const { departures, plan } = foldDepartures(events, setUp.kit.heaters.map(idOf), context);
  return {
    setUp,
    ...course.standing(),
    departures,
    ...(plan === undefined ? {} : { plan }),
    faults: openFaults(events, context.cleared),
    checked: checkedPlans(setUp, events, context),
  };
}

type Standing = Omit<AircraftState, "setUp" | "departures" | "plan" | "faults" | "checked">;

class Course {
  readonly #setUp: BaseAircraft;
  readonly #lost: DerivingContext["lost"];
  readonly #heaters: readonly string[];
  readonly #covers: readonly string[];
  readonly #heatersOn = new Set<string>();
  readonly #switches: Map<string, SwitchStanding>;
  #coversOn: Set<string>;
  #anchor: Anchor;
  #place: Anchor["place"];
  #changes: Change[] = [];
  #readings: AircraftState["readings"][number][] = [];
  #running = false;
  #lastStart: AircraftState["lastStart"];

  constructor(setUp: BaseAircraft, lost: DerivingContext["lost"]) {
    this.#setUp = setUp;
    this.#lost = lost;
    this.#heaters = setUp.kit.heaters.map(idOf);
    this.#covers = setUp.kit.covers.map(idOf);
    this.#switches = new Map(setUp.switches.map(({ id }) => [id, {}]));
    this.#coversOn = new Set(setUp.known.covers_on);
    this.#place = setUp.known.place;
    this.#anchor = this.#anchoredAt(Date.parse(setUp.known.at), "set-up", setUp.known.initial);
  }

  takeKnown(): void {
    const { at, place, covers_on, initial } = this.#setUp.known;
    this.#place = place;
    this.#coversOn = new Set(covers_on);
    this.#running = false;
    this.#anchor = this.#anchoredAt(Date.parse(at), "set-up", initial);
  }

  take(event: PlainEvent): void {
    const at = Date.parse(event.at);
    switch (event.kind) {
      case "plugged-in":
      case "unplugged": {
        const heaters = this.#ofKit(event.heaters, this.#heaters, "heater", event.id);
        this.#heat(at, event.kind === "plugged-in" ? "plug_in" : "unplug", heaters);
        break;
      }
      case "cover-on":
      case "cover-off": {
        const covers = this.#ofKit(event.covers, this.#covers, "cover", event.id);
        this.#cover(at, event.kind === "cover-on" ? "cover_on" : "cover_off", covers);
        break;
      }
      case "moved":
        if (event.to !== this.#place) this.#changes.push({ at, do: "move", to: event.to });
        this.#place = event.to;
        break;
      case "reading":
        this.#readings.push({ at, part: event.part, tempC: event.temp_c });
        break;
      case "started":
        this.#lastStart = { at, how: event.how };
        if (event.how !== "failed") this.#running = true;
        break;
      case "shut-down":
        this.#running = false;
        this.#anchor = this.#anchoredAt(at, "shut-down", { shut_down_h_ago: 0 });
        break;
      case "switch-commanded":
        this.#switched(event.switch, event.id, { commanded: { to: event.to, at } });
        break;
      case "switch-confirmed": {
        this.#switched(event.switch, event.id, { confirmed: { is: event.is, at } });
        const heaters = this.#setUp.switches.find(({ id }) => id === event.switch)?.heaters ?? [];
        this.#heat(at, event.is === "on" ? "plug_in" : "unplug", heaters);
      }
    }
  }

  standing(): Standing {
    return {
      place: this.#place,
      coversOn: inOrderOf(this.#covers, this.#coversOn),
      heatersOn: inOrderOf(this.#heaters, this.#heatersOn),
      anchor: this.#anchor,
      changes: this.#changes,
      readings: this.#readings,
      running: this.#running,
      ...(this.#lastStart === undefined ? {} : { lastStart: this.#lastStart }),
      switches: this.#switches,
    };
  }

  #anchoredAt(at: number, from: Anchor["from"], initial: Anchor["initial"]): Anchor {
    this.#changes = [];
    this.#readings = [];
    return {
      at,
      from,
      place: this.#place,
      coversOn: inOrderOf(this.#covers, this.#coversOn),
      heatersOn: inOrderOf(this.#heaters, this.#heatersOn),
      initial,
    };
  }

  #heat(at: number, what: "plug_in" | "unplug", heaters: readonly string[]): void {
    const changed = changedIn(this.#heatersOn, heaters, what === "plug_in");
    if (changed.length > 0) this.#changes.push({ at, do: what, heaters: changed });
  }

  #cover(at: number, what: "cover_on" | "cover_off", covers: readonly string[]): void {
    const changed = changedIn(this.#coversOn, covers, what === "cover_on");
    if (changed.length > 0) this.#changes.push({ at, do: what, covers: changed });
  }

  #switched(id: string, event: string, news: SwitchStanding): void {
    const standing = this.#switches.get(id);
    if (standing === undefined) this.#lost(event, `${this.#setUp.id} has no switch ${id}`);
    else this.#switches.set(id, { ...standing, ...news });
  }

  #ofKit(ids: readonly string[], kit: readonly string[], what: string, event: string): readonly string[] {
    return ids.filter((id, i) => {
      if (kit.includes(id)) return ids.indexOf(id) === i;
      this.#lost(event, `${this.#setUp.id} has no ${what} ${id}`);
      return false;
    });
  }
}

function idOf(entry: string | { readonly id: string }): string {
  return typeof entry === "string" ? entry : entry.id;
}

/** Only what changes something is a change: a switch may say that it is on a hundred times a night. */
function changedIn(some: Set<string>, ids: readonly string[], on: boolean): readonly string[] {
  const changed = ids.filter((id) => some.has(id) !== on);
  for (const id of changed) {
    if (on) some.add(id);
    else some.delete(id);
  }
  return changed;
}

function inOrderOf(all: readonly string[], some: ReadonlySet<string>): readonly string[] {
  return all.filter((id) => some.has(id));
}
