import type { ThawOutlookDocument, ThawRemedy } from "../../index.js";
import type { Style } from "../style.js";
import { countedOdds } from "./airframe-text.js";
import { clock, needed, span } from "./words.js";

/** One thing that was tried, with its chance. @example "a fan, 3 m/s over it: 6 in 10" */
export function remedyText(remedy: ThawRemedy, { trials, start }: ThawOutlookDocument, style: Style): string {
  const chance = countedOdds(remedy.chance, trials.members);
  switch (remedy.kind) {
    case "change": {
      const [short] = style.say(remedy.change.text).split(":");
      return `${short}: ${chance}`;
    }
    case "longer":
      return remedy.hours === null
        ? `a longer stay: not surely dry even after ${span(remedy.longest)}`
        : `a stay of ${needed(remedy.hours)}: ${chance}`;
    case "mild":
      return remedy.leave === null
        ? `no mild air outside by ${clock(remedy.until, start)}`
        : `leaving into mild air at ${clock(remedy.leave, start)}: ${chance}`;
  }
}
