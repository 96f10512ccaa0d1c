import type { Heater } from "../aircraft/index.js";
import type { BaseLimits, Cart, Circuit } from "../base-plan/index.js";
import { type Course, electricPower, heaterFits } from "../base-plan/index.js";
import {
  type BaseDocument,
  type BaseSections,
  baseSchema,
  type Clock,
  clockOf,
  type DocumentIssue,
  epochOfText,
  fault,
  inFormOfKind,
  isRecord,
  issueText,
  jsonOf,
  kitOf,
  type Notes,
  newNotes,
  type Path,
  type ReadFile,
  type Reading,
  readScenarioDocument,
  sectionsBy,
} from "../documents/index.js";
import { eachOnce, type Finding, finding, findingOf, keyOf } from "../findings/index.js";
import { CONTINUOUS_SHARE, continuousLimit } from "../logbook/index.js";
import type { AircraftScenario } from "../scenario/index.js";
import { USUAL_MEMBERS } from "../simulation/index.js";
import { toldOf } from "./told-reading.js";

/** A base as read from its document. */
export interface ReadBase {
  readonly document: BaseDocument;
  readonly name: string;
  readonly zone: string;
  /** [s] since 1970-01-01T00:00Z */
  readonly start: number;
  readonly limits: BaseLimits;
  readonly ensemble: { readonly members: number; readonly seed: number };
  /** Those that are wanted. */
  readonly aircraft: readonly ReadBaseAircraft[];
  /** In the hangar, wanted for nothing. */
  readonly parked: readonly { readonly id: string; readonly name: string }[];
  /** On the ramp, wanted for nothing: names. */
  readonly notPlanned: readonly string[];
  readonly assumptions: readonly Finding[];
  readonly warnings: readonly DocumentIssue[];
}

export interface ReadBaseAircraft {
  readonly id: string;
  readonly read: AircraftScenario;
  readonly circuits: readonly number[];
  readonly switched: boolean;
  readonly connected: number | undefined;
  readonly carts: readonly number[];
  readonly told: Course | undefined;
}

export type BaseReading = Reading<ReadBase>;

const MINUTE = 60;
/** [min] to take a heater from one aircraft to the next and set it up; project judgement. */
const USUAL_CART_MOVE = 10;
const USUAL_SEED = 1;

/** Reads a base document, as text or as a value, with every aircraft's scenario. */
export function readBaseDocument(
  source: unknown,
  { readFile }: { readonly readFile?: ReadFile } = {},
): BaseReading {
  const form = inFormOfKind("base", source);
  if (!form.ok) return { ok: false, issues: [form.issue] };
  const findings = newNotes();
  const sections = sectionsBy(baseSchema, form.document, findings);
  const clock = clockOf(sections, findings);
  refuseSameIds(sections, findings);
  if (clock === undefined || findings.issues.length > 0) return { ok: false, issues: findings.issues };
  const document = sections as BaseDocument;
  const limits = limitsOf(document, clock, findings);
  const { members = USUAL_MEMBERS, seed = USUAL_SEED } = document.ensemble ?? {};
  const read = document.aircraft.map((_, i) => aircraftOf(document, i, members, seed, readFile, findings));
  const known = read.flatMap((one, i) => (one === undefined ? [] : [{ one, i }]));
  findings.assumptions.push(...assumedOf(known.map(({ one }) => one)));
  const ids = document.aircraft.map((a) => a.id);
  const planned = known.flatMap(({ one, i }): ReadBaseAircraft[] => {
    if (one.want === undefined) return [];
    const circuits = circuitsOf(document, i, findings);
    const connected = connectedOf(document, i, one, circuits, findings);
    return [
      {
        id: ids[i],
        read: one,
        circuits,
        switched: document.aircraft[i].switching !== "hand",
        connected,
        carts: cartsFor(document, limits.carts, ids[i], one),
        told: toldOf(document, ids[i], one, clock, limits, findings),
      },
    ];
  });
  (document.told ?? []).forEach(({ id }, i) => {
    if (!ids.includes(id)) fault(findings, ["told", i, "id"], `one of ${ids.join(", ")}`, id);
  });
  const idle = known.filter(({ one }) => one.want === undefined);
  const inHangar = (one: AircraftScenario) => one.scenario.initial.configuration.place === "hangar";
  const parked = idle
    .filter(({ one }) => inHangar(one))
    .map(({ one, i }) => ({ id: ids[i], name: one.name }));
  refuseMoreThanThere(planned, parked.length, limits, findings);
  if (findings.issues.length === 0 && planned.length === 0) {
    fault(findings, ["aircraft"], "at least one with a departure that is wanted", "none");
  }
  if (findings.issues.length > 0) return { ok: false, issues: findings.issues };
  noteAssumptions(document, planned, limits, members, findings);
  return {
    ok: true,
    document,
    name: document.name,
    zone: clock.zone,
    start: clock.start,
    limits,
    ensemble: { members, seed },
    aircraft: planned,
    parked,
    notPlanned: idle.map(({ one }) => one.name),
    assumptions: [...new Set(findings.assumptions)],
    warnings: findings.warnings,
  };
}

/** A document with the base's shared sections put in where the aircraft's leaves them out. */
function aircraftOf(
  document: BaseDocument,
  i: number,
  members: number,
  seed: number,
  readFile: ReadFile | undefined,
  findings: Notes,
): AircraftScenario | undefined {
  const path = ["aircraft", i, "scenario"];
  const own = sourceOf(document.aircraft[i].scenario, path, readFile, findings);
  if (own === undefined) return undefined;
  const { start, zone, hours, weather, site, hangar } = document;
  const shared = {
    soakline: document.soakline,
    start,
    ...(zone === undefined ? {} : { zone }),
    hours,
    weather,
    ...(site === undefined ? {} : { site }),
    ...(hangar === undefined ? {} : { hangar: { air_c: hangar.air_c } }),
    ensemble: { ...document.ensemble, members, seed },
  };
  for (const [key, value] of Object.entries(shared)) {
    if (own[key] === undefined || key === "ensemble" || sameValue(own[key], value)) continue;
    fault(
      findings,
      [...path, key],
      `what the base has, or nothing: ${JSON.stringify(value).slice(0, 60)}`,
      own[key],
    );
  }
  const reading = readScenarioDocument({ ...own, ...shared }, readFile === undefined ? {} : { readFile });
  if (!reading.ok) {
    const prefix = `aircraft[${i}].scenario`;
    for (const issue of reading.issues) {
      const shares = issue.path.split(/[.[,]/)[0] in shared;
      const at = shares ? issue.path : `${prefix}.${issue.path}`;
      const told = { ...issue, path: at };
      // What all share is wrong for all alike, and said once.
      if (!findings.issues.some((known) => issueText(known) === issueText(told))) findings.issues.push(told);
    }
    return undefined;
  }
  refuseOwnPlan(reading, path, findings);
  findings.warnings.push(...reading.warnings.map((w) => ({ ...w, path: `${reading.name}: ${w.path}` })));
  return reading;
}

function sourceOf(
  scenario: BaseDocument["aircraft"][number]["scenario"],
  path: Path,
  readFile: ReadFile | undefined,
  findings: Notes,
): Record<string, unknown> | undefined {
  if (typeof scenario !== "string") return scenario;
  if (readFile === undefined) return fault(findings, path, "no file: files cannot be read here", scenario);
  const file = readFile(scenario);
  if (!file.ok) return fault(findings, path, `a file that can be read (${file.reason})`, scenario);
  const json = jsonOf(file.text);
  if (!json.ok) return fault(findings, path, `a file of ${json.issue.expected}`, json.issue.received);
  return isRecord(json.value) ? json.value : fault(findings, path, "a file with an object", json.value);
}

/** What was assumed of all alike, as of the weather that they share, is said once; the rest with its aircraft. */
function assumedOf(read: readonly AircraftScenario[]): Finding[] {
  const isOfAll = (said: Finding) =>
    read.every(({ assumptions }) => assumptions.some((other) => keyOf(other) === keyOf(said)));
  return eachOnce(
    read.flatMap(({ assumptions, name }) =>
      assumptions.map((said) => (isOfAll(said) ? said : finding("of-aircraft", { name, finding: said }))),
    ),
  );
}

function sameValue(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

/** When heaters and aircraft go where is the base plan's business. */
function refuseOwnPlan({ scenario }: AircraftScenario, path: Path, findings: Notes): void {
  for (const { change } of scenario.events) {
    if (change.do === "cover-on" || change.do === "cover-off") continue;
    const expected = "covers only: the base plan says when to plug in, unplug and move";
    fault(findings, [...path, "events"], expected, change.do.replace("-", "_"));
  }
}

function limitsOf(document: BaseDocument, clock: Clock, findings: Notes): BaseLimits {
  const moment = (text: string, path: Path) =>
    (epochOfText(text, path, clock, findings) ?? clock.start) - clock.start;
  const span = ({ from, to }: { readonly from: string; readonly to: string }, path: Path) => {
    const ends = { from: moment(from, [...path, "from"]), to: moment(to, [...path, "to"]) };
    if (!(ends.to > ends.from)) fault(findings, [...path, "to"], `a time after ${from}`, to);
    return ends;
  };
  const { circuits, carts = [], hangar, people } = document;
  return {
    circuits: circuits.map((c, i): Circuit => {
      const available = c.available?.map((w, k) => span(w, ["circuits", i, "available", k]));
      return {
        id: c.id,
        name: c.name ?? c.id,
        breaker: c.limit_a,
        currentMost: continuousLimit(c, c.continuous_share),
        voltage: c.voltage_v,
        outlets: c.outlets,
        generator: c.generator ?? false,
        available,
      };
    }),
    carts: carts.flatMap((cart, i): Cart[] => {
      const heater = cartHeater(cart.heater, i, findings);
      if (heater === undefined) return [];
      return [{ id: cart.id, heater, count: 1, moveTime: (cart.move_min ?? USUAL_CART_MOVE) * MINUTE }];
    }),
    hangar:
      hangar === undefined
        ? undefined
        : { bays: hangar.bays, moveTime: hangar.move_min * MINUTE, movePeople: hangar.move_people ?? 1 },
    people: people?.map((p, i) => ({ ...span(p, ["people", i]), count: p.count })),
  };
}

function cartHeater(
  heater: NonNullable<BaseDocument["carts"]>[number]["heater"],
  i: number,
  findings: Notes,
): Heater | undefined {
  const own = newNotes();
  const kit = kitOf({ kit: { heaters: [heater], covers: [] } }, undefined, own);
  for (const issue of own.issues) {
    findings.issues.push({ ...issue, path: issue.path.replace("kit.heaters[0]", `carts[${i}].heater`) });
  }
  return kit?.heaters[0];
}

function circuitsOf(document: BaseDocument, i: number, findings: Notes): number[] {
  const ids = document.circuits.map((c) => c.id);
  const reached = document.aircraft[i].circuits ?? ids;
  return reached.flatMap((id, k) => {
    const index = ids.indexOf(id);
    if (index < 0) fault(findings, ["aircraft", i, "circuits", k], `one of ${ids.join(", ") || "none"}`, id);
    return index < 0 ? [] : [index];
  });
}

/** Where its plug is at the start: said, or plain because it reaches one circuit only. */
function connectedOf(
  document: BaseDocument,
  i: number,
  { scenario, want }: AircraftScenario,
  circuits: readonly number[],
  findings: Notes,
): number | undefined {
  const { connected } = document.aircraft[i];
  const on = [...scenario.initial.configuration.heatersOn];
  const planned = want?.heaters ?? [];
  const other = on.find((id) => !planned.includes(id));
  if (other !== undefined) {
    const expected = `heaters of the wish: ${planned.join(", ") || "none"}`;
    return fault(findings, ["aircraft", i, "scenario", "plugged_in"], expected, other);
  }
  if (on.length > 0 && on.length < planned.length) {
    const expected = `all heaters of the wish or none: ${planned.join(", ")}`;
    return fault(findings, ["aircraft", i, "scenario", "plugged_in"], expected, on.join(", "));
  }
  if (connected === undefined) {
    if (on.length === 0) return undefined;
    if (circuits.length === 1) return circuits[0];
    return fault(
      findings,
      ["aircraft", i, "connected"],
      "the circuit its plug is in: it is plugged in",
      undefined,
    );
  }
  if (on.length === 0 && document.aircraft[i].switching === "hand") {
    const expected = "nothing: without a switch, plugged in is on (scenario.plugged_in says so)";
    return fault(findings, ["aircraft", i, "connected"], expected, connected);
  }
  const index = document.circuits.findIndex((c) => c.id === connected);
  if (index >= 0 && circuits.includes(index)) return index;
  const reached = circuits.map((k) => document.circuits[k].id).join(", ");
  return fault(findings, ["aircraft", i, "connected"], `a circuit it reaches: ${reached}`, connected);
}

function cartsFor(
  { carts = [] }: BaseDocument,
  known: readonly Cart[],
  id: string,
  { scenario }: AircraftScenario,
): number[] {
  return known.flatMap((cart, index) => {
    const allowed = carts.find((c) => c.id === cart.id)?.aircraft;
    const may = allowed === undefined || allowed.includes(id);
    // A cart is called in as a remedy: never one that makers reject.
    const isFit = cart.heater.rejected === undefined && heaterFits(cart.heater, scenario.installation);
    return may && isFit ? [index] : [];
  });
}

function refuseSameIds({ aircraft = [], circuits = [], carts = [] }: BaseSections, findings: Notes): void {
  for (const [name, list] of Object.entries({ aircraft, circuits, carts })) {
    const ids = list.map((entry) => entry.id);
    ids.forEach((id, i) => {
      if (ids.indexOf(id) < i) fault(findings, [name, i, "id"], "an id that stands once", id);
    });
  }
  const ids = aircraft.map((a) => a.id);
  carts.forEach((cart, i) => {
    (cart.aircraft ?? []).forEach((id, k) => {
      if (!ids.includes(id)) fault(findings, ["carts", i, "aircraft", k], `one of ${ids.join(", ")}`, id);
    });
  });
}

/** What is in use at the start must fit in what there is: no plan could mend it. */
function refuseMoreThanThere(
  aircraft: readonly ReadBaseAircraft[],
  parked: number,
  limits: BaseLimits,
  findings: Notes,
): void {
  const inside =
    aircraft.filter((a) => a.read.scenario.initial.configuration.place === "hangar").length + parked;
  const bays = limits.hangar?.bays ?? 0;
  if (inside > bays)
    fault(findings, ["hangar", "bays"], `${inside} or more: so many aircraft stand inside`, bays);
  limits.circuits.forEach((circuit, c) => {
    const there = aircraft.filter((a) => a.connected === c);
    if (there.length > circuit.outlets) {
      const expected = `${there.length} or more: so many aircraft are plugged in`;
      fault(findings, ["circuits", c, "outlets"], expected, circuit.outlets);
    }
    const current = there.reduce((sum, { read: { scenario } }) => {
      const on = scenario.kit.heaters.filter((h) => scenario.initial.configuration.heatersOn.has(h.id));
      return sum + on.reduce((watts, h) => watts + electricPower(h), 0) / circuit.voltage;
    }, 0);
    if (current > circuit.currentMost) {
      const expected = `plugged in on ${circuit.id} at most ${circuit.currentMost.toFixed(1)} A: unplug something first`;
      fault(findings, ["aircraft"], expected, `${current.toFixed(1)} A`);
    }
  });
}

function noteAssumptions(
  document: BaseDocument,
  aircraft: readonly ReadBaseAircraft[],
  limits: BaseLimits,
  members: number,
  { assumptions }: Notes,
): void {
  const shares = document.circuits.filter((c) => c.continuous_share === undefined);
  if (shares.length > 0) {
    assumptions.push(finding("circuits-planned-to", { share: CONTINUOUS_SHARE }));
  }
  if (document.ensemble?.members === undefined) {
    assumptions.push(finding("members-taken", { members }));
  }
  const correction = document.ensemble?.correction;
  if (correction !== undefined) {
    const { plans, air_k, spread } = correction;
    assumptions.push(finding("corrected-by-record", { plans, colder_k: -air_k, spread }));
  }
  for (const { id, heater } of limits.carts) {
    if (heater.rejected !== undefined)
      assumptions.push(finding("cart-rejected", { cart: id, why: findingOf(heater.rejected) }));
  }
  if (document.people === undefined) assumptions.push(finding("somebody-always", {}));
  if (document.hangar === undefined && aircraft.length > 0) {
    assumptions.push(finding("no-hangar-described", {}));
  }
  for (const { read } of aircraft) {
    const { place } = read.scenario.initial.configuration;
    if (place === "hangar" && read.want?.wish.pulledOut === false) {
      assumptions.push(finding("pulled-out-to-start", { aircraft: read.name }));
    }
  }
}
