import type { z } from "zod";
import {
  type Ensemble,
  OPEN_SITE,
  PANELS,
  type Panel,
  panelWithFuel,
  WING_COVERS,
  type WingCover,
  type WingSite,
} from "../airframe/index.js";
import { finding } from "../findings/index.js";
import { pressureStandard, RANGE_DENSITY_AVGAS } from "../properties/index.js";
import { kelvinFromCelsius } from "../units/index.js";
import type { airframeEnsemble, airframeSite, fuel, panel, wingCover } from "./airframe-schema.js";
import { fault, type Notes } from "./reading.js";
import { rounded } from "./result-header.js";

/** [K] of a temperature in a document, to the nanokelvin, so that a bound on the one scale is the bound on the other. */
export function kelvinOf(celsius: number): number {
  return rounded(kelvinFromCelsius(celsius), 9);
}

/** The panel that is looked at, and how warm what is inside it is [K], where that is known. */
export interface ReadPanel {
  readonly panel: Panel;
  readonly tempInside: number | undefined;
}

/**
 * The panel with what is behind it; undefined, with an issue here or before, when it cannot be told.
 * @param elsewhere what fuel of unknown temperature is as warm as: [K], and which that is
 */
export function panelOf(
  sections: { readonly panel?: z.infer<typeof panel>; readonly fuel?: z.infer<typeof fuel> },
  elsewhere: { readonly temp: number | undefined; readonly as: "air-at-start" | "skin-at-roll-in" },
  notes: Notes,
): ReadPanel | undefined {
  const dry = dryPanel(sections.panel, notes);
  const tank = sections.fuel;
  if (tank === undefined) {
    notes.assumptions.push(finding("no-fuel-named", {}));
    return dry && { panel: dry, tempInside: undefined };
  }
  if (tank.temp_c === undefined) notes.assumptions.push(finding("fuel-as", { as: elsewhere.as }));
  const temp = tank.temp_c === undefined ? elsewhere.temp : kelvinOf(tank.temp_c);
  if (dry === undefined || temp === undefined) return undefined;
  const tempFuel = Math.min(RANGE_DENSITY_AVGAS.max, Math.max(RANGE_DENSITY_AVGAS.min, temp));
  return { panel: panelWithFuel(dry, tank.depth_mm / 1000, tempFuel, tank.full), tempInside: tempFuel };
}

const USUAL_PANEL = "aluminium-painted";

function dryPanel(given: z.infer<typeof panel> = USUAL_PANEL, notes: Notes): Panel | undefined {
  if (typeof given === "string") {
    return byId(given, PANELS) ?? fault(notes, ["panel"], anyOf(PANELS), given);
  }
  return {
    name: given.name,
    chord: given.chord_m,
    span: given.span_m,
    heatCapacityUpper: given.upper_skin_j_per_m2k,
    heatCapacityLower: given.lower_skin_j_per_m2k,
    emissivity: given.emissivity,
    inside: {
      heatCapacity: given.inside_j_per_m2k,
      coefficientUpper: given.inside_upper_w_per_m2k,
      coefficientLower: given.inside_lower_w_per_m2k,
    },
    origin: given.origin,
  };
}

export function wingCoverOf(given: z.infer<typeof wingCover>, notes: Notes): WingCover | undefined {
  if (typeof given === "string") {
    return byId(given, WING_COVERS) ?? fault(notes, ["cover"], anyOf(WING_COVERS), given);
  }
  return {
    resistance: given.resistance_m2k_per_w,
    heatCapacity: given.heat_capacity_j_per_m2k,
    emissivity: given.emissivity,
    vapourLeak: given.vapour_leak,
    origin: given.origin,
  };
}

function byId<T>(id: string, catalogue: Readonly<Record<string, T>>): T | undefined {
  return Object.hasOwn(catalogue, id) ? catalogue[id] : undefined;
}

function anyOf(catalogue: Readonly<Record<string, unknown>>): string {
  return `one of ${Object.keys(catalogue).join(", ")}, or a description`;
}

/** Where the wing stands; what the document leaves open is that of an open strip in winter. */
export function wingSiteOf(given: z.infer<typeof airframeSite> = {}, notes: Notes): WingSite {
  const { roughness_m, wing_height_m, open_sky_fraction, elevation_m } = given;
  if ([roughness_m, wing_height_m, open_sky_fraction, elevation_m].includes(undefined)) {
    notes.assumptions.push(
      finding("place-taken", {
        ...(roughness_m === undefined ? { roughness_m: OPEN_SITE.roughness } : {}),
        ...(wing_height_m === undefined ? { wing_height_m: OPEN_SITE.height } : {}),
        isOpenSky: open_sky_fraction === undefined,
        isSeaLevel: elevation_m === undefined,
      }),
    );
  }
  return {
    height: wing_height_m ?? OPEN_SITE.height,
    roughness: roughness_m ?? OPEN_SITE.roughness,
    skyView: open_sky_fraction ?? OPEN_SITE.skyView,
    pressure: pressureStandard(elevation_m ?? 0),
  };
}

const USUAL_SEED = 1;

export function airframeEnsembleOf(
  { members, seed = USUAL_SEED }: z.infer<typeof airframeEnsemble> = {},
  usual: number,
  notes: Notes,
): Ensemble {
  if (members === undefined) notes.assumptions.push(finding("members-taken", { members: usual }));
  return { members: members ?? usual, seed };
}
