import { type DocumentIssue, newNotes, sectionsBy } from "../documents/index.js";
import { type Finding, finding } from "../findings/index.js";
import { cautionsOf } from "../switching/index.js";
import { type BaseSetUp, baseSetUpSchema } from "./set-up.js";
import { checkAircraft } from "./set-up-aircraft.js";
import { checkSwitches } from "./set-up-switches.js";

/** Why switches must not put a heater on, by "aircraft/switch". */
export type UnsafeSwitches = ReadonlyMap<string, Finding>;

/** The set-up that stands is asked about every second. */
const worked = new WeakMap<BaseSetUp, UnsafeSwitches>();

/**
 * Switches of a base that stands which would be refused if it were written today: a logbook that is older than a rule
 * opens all the same. Where the aircraft, or the kit of one, cannot be read, that is every one of them.
 */
export function unsafeSwitches(base: BaseSetUp): UnsafeSwitches {
  const before = worked.get(base);
  if (before !== undefined) return before;
  const notes = newNotes();
  const sections = sectionsBy(baseSetUpSchema, base as Readonly<Record<string, unknown>>, notes);
  const unreadable = sections.aircraft === undefined ? [...notes.issues] : [];
  checkAircraft(sections, notes);
  checkSwitches(sections, notes);
  const unsafe = new Map<string, Finding>();
  base.aircraft.forEach(({ id, switches }, i) => {
    switches.forEach((one, j) => {
      const places = [`aircraft[${i}].switches[${j}].`, `aircraft[${i}].kit.`];
      const own = notes.issues.filter(({ path }) => places.some((place) => path.startsWith(place)));
      const issues = [...new Set([...own, ...unreadable])];
      if (issues.length > 0) unsafe.set(`${id}/${one.id}`, reasonFrom(issues));
    });
  });
  worked.set(base, unsafe);
  return unsafe;
}

/** Faults told at once; the form for the set-up names the others. */
const TOLD = 3;

function reasonFrom(issues: readonly DocumentIssue[]): Finding {
  const told = issues.slice(0, TOLD).map(({ path, expected, received }) => ({
    place: path.replace(/^aircraft\[\d+\]\.(switches\[\d+\]\.)?/, ""),
    expected,
    received,
  }));
  return finding("switch-unsafe", { issues: told });
}

/** What a person must know of every switch of a base that is allowed, each with its place: "aircraft[0].switches[1]". */
export function switchCautions(base: BaseSetUp): readonly {
  readonly aircraft: string;
  readonly switch: string;
  readonly path: string;
  readonly caution: Finding;
}[] {
  return base.aircraft.flatMap(({ id: aircraft, switches }, i) =>
    switches.flatMap((one, j) =>
      cautionsOf(one).map((caution) => ({
        aircraft,
        switch: one.id,
        path: `aircraft[${i}].switches[${j}]`,
        caution,
      })),
    ),
  );
}
