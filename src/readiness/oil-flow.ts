import { oilById } from "../aircraft/index.js";
import { crankingLimitOil, type OilLimit, pumpingLimitOil } from "../properties/index.js";
import { type CriterionMaker, lowest, named } from "./criterion.js";

const BASIS: Readonly<Record<OilLimit["basis"], string>> = {
  "winter-grade": "limit of the oil's own SAE J300 grade on its Walther line",
  "between-grades":
    "SAE J300 read between its rows on the oil's Walther line (project judgement for straight grades)",
  "pour-point": "pour point of the oil",
};

/** Where an oil gets too stiff for something. */
function oilAbove(
  id: "oil-pump" | "oil-crank",
  parts: readonly string[],
  limitOf: (oil: ReturnType<typeof oilById>) => OilLimit,
): CriterionMaker {
  return ({ installation }) => {
    const oil = oilById(installation.oil.oil_id);
    const { temp, basis } = limitOf(oil);
    return [lowest(named(id, {}), parts, temp, `${BASIS[basis]}; ${oil.name}: ${oil.origin}`)];
  };
}

export const oilPump = oilAbove("oil-pump", ["oil"], pumpingLimitOil);
export const oilCrank = oilAbove("oil-crank", ["barrels", "crankshaft"], crankingLimitOil);
