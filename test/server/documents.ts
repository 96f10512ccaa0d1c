import { readFileSync } from "node:fs";
import type { NowDocument, PlanDocument } from "../../src/documents/index.js";
import { readTemperatureLog } from "../../src/learning/index.js";
import { nowFromDocument, type Outcome, planFromDocument } from "../../src/questions/index.js";

/** What the keeper would hand over: a real plan, as it comes out of JSON. */
export function planAnswer(): PlanDocument {
  return through(planFromDocument(readFileSync("examples/lynx-tonight.json", "utf8")));
}

/** A real estimate of now. */
export function nowAnswer(): NowDocument {
  const night = readFileSync("examples/lynx-logged-night.json", "utf8");
  const reading = readTemperatureLog(readFileSync("examples/logs/lynx-night.csv", "utf8"));
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return through(nowFromDocument(night, reading.log));
}

function through<T>(outcome: Outcome<T>): T {
  if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
  return JSON.parse(JSON.stringify(outcome.result));
}
