import type { CriteriaFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

const WARM = {
  oil: "oil",
  bearings: "crankshaft and bearings",
  crankcase: "crankcase",
  barrels: "barrels and pistons",
  heads: "coldest cylinder head",
} as const;

export const criteria: Phrases<CriteriaFindings> = {
  "criterion-oil": ({ in: place }) => `oil in the ${place}`,
  "criterion-oil-why": () => "congealed oil does not reach the pump and starves the bearings",
  "criterion-bearings": () => WARM.bearings,
  "criterion-bearings-why": () =>
    "no gauge shows them; cold bearings have stiff oil and, in an aluminium case, the least clearance",
  "criterion-crankcase": () => WARM.crankcase,
  "criterion-crankcase-why": () => "oil galleries and bearing saddles are in it",
  "criterion-barrels": () => WARM.barrels,
  "criterion-barrels-why": () =>
    "aluminium pistons outgrow cold steel barrels in the first minutes, and oil films there carry most of the drag",
  "criterion-heads": () => WARM.heads,
  "criterion-heads-why": () =>
    "fuel does not vaporise on cold heads and plugs frost over after a failed start",
  "criterion-oil-cooler": () => "oil cooler, filter and lines",
  "criterion-oil-cooler-why": () =>
    "congealed oil in cooler, filter or lines holds back the oil that the sump has warm",
  "criterion-warm": ({ part }) => `${WARM[part]}, warm through`,
  "criterion-warm-why": () =>
    "past the maker's limit an engine may be started; warm through it starts easily and wears little",
  "criterion-evenness": () => "hottest less coldest part of the engine",
  "criterion-evenness-why": () => "a half-warm engine has warm gauges and cold bearings or cylinders",
  "criterion-oil-maximum": () => "oil, hottest",
  "criterion-oil-maximum-why": () => "hotter oil ages and boils off",
  "criterion-oil-film": () => "oil film at the heated wall",
  "criterion-oil-film-why": () => "thick cold oil over a hot wall cokes long before the bulk is warm",
  "criterion-hub": () => "propeller hub",
  "criterion-hub-why": () => "congealed oil in the hub leaves the propeller without control",
  "criterion-surface": ({ heater, element }) => `surface of ${heater}, ${element}`,
  "criterion-surface-why": () =>
    "a surface hot enough to char oil, hose or cover is a fire risk; it needs a look, not only a number",
  "criterion-oil-pump": () => "oil flows to the pump",
  "criterion-oil-pump-why": () =>
    "oil that does not flow to the pump leaves bearings dry, whatever the gauge's needle does later",
  "criterion-oil-crank": () => "oil films thin enough to crank",
  "criterion-oil-crank-why": () =>
    "most of a cold engine's drag is in the films between pistons and barrels and in the bearings",
  "criterion-cranking-speed": () => "cranking speed",
  "criterion-cranking-speed-why": () =>
    "turned too slowly, the engine draws no mixture and stops at compression; the battery is flat before it fires",
  "criterion-tries": () => "tries of 5 s that the battery has",
  "criterion-tries-why": () =>
    "a cold engine seldom starts at the first try, and a flat battery in the cold soon freezes",
  "criterion-battery": ({ kind }) =>
    kind === "lithium" ? "battery above its cut-off" : "battery above freezing",
  "criterion-battery-why": ({ kind, charge }, say) =>
    kind === "lithium"
      ? "the pack gives nothing below its cut-off"
      : `acid of a battery ${say.percent(charge)} charged freezes; a frozen battery can burst when it is loaded or charged`,
  "criterion-battery-charge": () => "battery warm enough to charge",
  "criterion-battery-charge-why": ({ kind }, say) =>
    kind === "lithium"
      ? `charging below ${say.temp(0)} harms the cells, also by the alternator`
      : "a colder battery takes almost no charge: what a start uses is not put back",
  "criterion-fuel-vapour": () => "fuel vapour at the coldest head",
  "criterion-fuel-vapour-why": () =>
    "even air saturated with this fuel is too lean to burn: no priming helps, only warmth",
  "criterion-fuel-offered": () => "fuel needed, times a warm start",
  "criterion-fuel-offered-why": () =>
    "more prime than that floods the intake before it evaporates: fire, washed cylinder walls, frosted plugs",
  "criterion-plugs": () => "coldest head, for a second try",
  "criterion-plugs-why": (_, say) =>
    `when it fires and quits in the cold, the plugs frost over: no second try below ${say.temp(0)}`,
  "criterion-bearing-clearance": () => "main-bearing clearance, index",
  "criterion-bearing-clearance-why": () =>
    "an aluminium case closes in on a steel shaft as it cools, where the oil is thickest",
  "criterion-piston-clearance": () => "room for hot pistons, index",
  "criterion-piston-clearance-why": () =>
    "pistons are hot within a minute and outgrow barrels that are still cold",
  "owners-limit": ({ maker }) =>
    maker === null ? "owner's stricter limit" : `owner's stricter limit; maker: ${maker}`,
};
