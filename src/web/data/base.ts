import { readForecasts } from "../../base/forecast.js";
import { demoOpening, heatingSince, scenarioOf } from "../../base/index.js";
import type { NowDocument } from "../../documents/index.js";
import { type BaseState, deriveBase } from "../../logbook/index.js";

// The one place where the web app takes a logbook's meaning from. Used in the planning worker only.

export { demoOpening, deriveBase, heatingSince, readForecasts, scenarioOf };

/** Where every part stands now; undefined where nothing but the entry is known. */
export function estimateNow(_state: BaseState, _aircraft: string, _now: number): NowDocument | undefined {
  return undefined;
}
