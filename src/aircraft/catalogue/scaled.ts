import type {
  Battery,
  Body,
  Clearances,
  Contacts,
  Cowl,
  Cranking,
  Fuel,
  Installation,
  Propeller,
  ShutDown,
  StartLimits,
} from "../description.js";
import { FOUR_CARBURETTOR_160 } from "./installations/four-carburettor-160.js";
import { START_ORIGINS } from "./start-origins.js";

/** What sets a class of engine apart from the one the numbers were fitted on. */
export interface ScalingFrom160 {
  /** Dry mass of the engine over the 120 kg of the reference class. */
  readonly massRatio: number;
  readonly cylinders: number;
  /** Skin area of the cowl over the reference's. */
  readonly cowlRatio: number;
  /** Origin of the mass and of anything that differs from plain scaling. */
  readonly origin: string;
}

const RULE =
  "scaled from four-carburettor-160: heat stores by dry mass, areas by mass^2/3, conductances within the engine by mass^2/3 (section over length), flanges by number of cylinders x size";

/** Bodies and contacts of another engine class by the scaling rule; the caller overrides what scaling cannot know. */
function scaledEngine({ massRatio, cylinders }: ScalingFrom160): Pick<Installation, "bodies" | "contacts"> {
  const base = FOUR_CARBURETTOR_160;
  const area = massRatio ** (2 / 3);
  const body = (b: Body): Body => ({
    heat_capacity_j_per_k: round(b.heat_capacity_j_per_k * massRatio, 100),
    area_m2: round(b.area_m2 * area, 0.01),
    height_m: b.height_m,
  });
  const { bodies, contacts } = base;
  const perCylinder = (cylinders / base.cylinders) * (massRatio / (cylinders / base.cylinders)) ** (2 / 3);
  const scaled = Object.fromEntries(
    Object.entries(contacts).map(([name, value]) => [
      name,
      round(value * (name.includes("barrels") ? perCylinder : area), 0.05),
    ]),
  ) as unknown as Contacts;
  return {
    bodies: {
      sump: body(bodies.sump),
      crankcase: body(bodies.crankcase),
      crankshaft: body(bodies.crankshaft),
      barrels: body(bodies.barrels),
      heads: body(bodies.heads),
      accessories: body(bodies.accessories),
    },
    contacts: scaled,
  };
}

function scaledCowl(ratio: number): Cowl {
  const base = FOUR_CARBURETTOR_160.cowl;
  return {
    ...base,
    skin_area_m2: round(base.skin_area_m2 * ratio, 0.1),
    skin_heat_capacity_j_per_k: round(base.skin_heat_capacity_j_per_k * ratio, 100),
    inlet_area_m2: round(base.inlet_area_m2 * ratio, 0.001),
    outlet_area_m2: round(base.outlet_area_m2 * ratio, 0.001),
    length_m: round(base.length_m * Math.sqrt(ratio), 0.1),
  };
}

/** Everything that is not scaled: said per class. */
export interface ClassFacts {
  readonly id: string;
  readonly name: string;
  readonly displacement_l: number;
  readonly compression_ratio: number;
  readonly oil: Installation["oil"];
  readonly propeller: Propeller;
  readonly battery: Battery;
  readonly cranking: Cranking;
  readonly clearances: Clearances;
  readonly fuel: Fuel;
  readonly shut_down: ShutDown;
  readonly limits: StartLimits;
  readonly limitOrigins: Readonly<Record<string, string>>;
}

export function scaledInstallation(scaling: ScalingFrom160, facts: ClassFacts): Installation {
  const { limitOrigins, ...rest } = facts;
  return {
    cooling: "air",
    lubrication: "wet-sump",
    ...rest,
    cylinders: scaling.cylinders,
    ...scaledEngine(scaling),
    cowl: scaledCowl(scaling.cowlRatio),
    origins: {
      cylinders: "definition of the class",
      displacement_l: "definition of the class",
      compression_ratio: "usual of the class, from memory",
      bodies: `${RULE}; ${scaling.origin}`,
      contacts: `${RULE}; ${scaling.origin}`,
      cowl: `openings and skin scaled by ${scaling.cowlRatio} from four-carburettor-160; project judgement`,
      oil: "typical quantity of the class, from memory",
      propeller: "project judgement, typical propeller of the class",
      battery: "project judgement: 0.85 kJ/kgK on the usual battery mass; links as four-carburettor-160",
      ...START_ORIGINS,
      ...limitOrigins,
    },
  };
}

function round(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toPrecision(6));
}
