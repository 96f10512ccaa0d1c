import type { Catalogue } from "../index.js";
import { airframe } from "./airframe.js";
import { basePlan } from "./base-plan.js";
import { cautions } from "./cautions.js";
import { criteria } from "./criteria.js";
import { documents } from "./documents.js";
import { firstScreen } from "./first-screen.js";
import { learning } from "./learning.js";
import { planning } from "./planning.js";
import { starting } from "./starting.js";
import { switching } from "./switching.js";
import { weather } from "./weather.js";
import { winter } from "./winter.js";

export { names } from "./names.js";

export const nb: Catalogue = {
  ...airframe,
  ...basePlan,
  ...cautions,
  ...criteria,
  ...documents,
  ...firstScreen,
  ...learning,
  ...planning,
  ...starting,
  ...switching,
  ...weather,
  ...winter,
};
