import type { SwitchingFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

const TO = { on: "på", off: "av" } as const;

export const switching: Phrases<SwitchingFindings> = {
  "server-stops": () => "serveren stanser",
  "unknown-after-start": () => "etter en oppstart er ingenting kjent",
  "unknown-after-lost-link": () => "etter en brutt forbindelse er ingenting kjent",
  "unknown-after-failed-command": () => "en kommando kom ikke fram: tilstanden er ikke kjent",
  "on-perhaps-late": () => "bryteren melder på, kanskje forsinket",
  "switched-on-by-other": () => "noen andre slo den på",
  "switched-off-by-other": () => "noen slo den av, kanskje med hendene der inne",
  "switched-off-by-hand": () => "slått av for hånd",
  "switched-on-by-hand": () => "slått på for hånd",
  "plan-was-withdrawn": () => "planen ble trukket tilbake",
  "outside-wanted-hours": () => "utenfor tiden den skal være på",
  "on-by-plan": ({ plan }) => `plan ${plan ?? "uten navn"}`,
  "switch-locked": ({ fault }) => `låst etter feilen «${fault}» til noen kvitterer for den`,
  "switch-unconfirmed": ({ to, within_s }) =>
    `bedt om ${TO[to]}, men ingen bekreftelse kom innen ${within_s} s`,
  "switch-memory-lost": () =>
    "det som var lagret om bryteren, kan ikke leses: om den var på, og hvor lenge, er ikke kjent",
  "switch-silent": () => "bryteren svarer ikke",
  "switching-failed": ({ error }) => `styringen av bryteren sviktet: ${error}`,
  "clock-jumped": () => "klokka er stilt eller har hoppet: klokkeslettene er ikke til å stole på ennå",
  "nothing-written-down": () => "ingenting kan skrives ned: tiden på kan bli glemt",
  "probe-too-hot": ({ probe, temp_c, at_most_c }, say) =>
    `${probe} er på ${say.temp(temp_c, 1)}, over grensen på ${say.temp(at_most_c)}`,
  "probe-stuck": ({ probe, temp_c, for_min }, say) =>
    `${probe} har meldt nøyaktig ${say.temp(temp_c, 1)} i ${for_min} min med varmeren på`,
  "probe-silent": ({ probe, within_s }) => `ikke noe nytt fra ${probe} innen ${within_s} s`,
  "on-time-used-up": ({ longest_min }) =>
    `den lengste tiden på, ${longest_min} min, er brukt opp: først hviler den`,
  "fault-ends-itself": ({ fault }) => `«${fault}» går over av seg selv når årsaken er borte`,
  "fault-not-open": ({ fault }) => `det er ingen feil «${fault}» å kvittere for`,
  "off-not-confirmed": () => "bryteren har ikke bekreftet at den er av ennå",
  "switch-not-ready": () => "bryteren er ikke klar ennå",
  "switch-unsafe": ({ issues }) => {
    const told = issues.map(
      ({ place, expected, received }) => `${place}: ventet ${expected}, fikk ${received}`,
    );
    return `oppsettet er ikke trygt (${told.join("; ")})`;
  },
  "switch-no-on-time": () =>
    "Denne bryteren slår seg ikke av selv. Stanser basens maskin, slår megleren den av. Stanser megleren eller nettet " +
    "også, blir varmeren stående på. Bruk en enhet som slår seg av selv, eller sett et tidsur på ledningen.",
  "plan-not-switched": ({ reason }, say) => `Planen blir ikke koblet inn: ${say.finding(reason)}.`,
  "heater-needs-somebody": ({ heater }, say) =>
    `${say.name(heater)} skal ikke gå uten tilsyn: den som blir hos den, slår den på`,
  "chance-too-low-to-heat": ({ chance }, say) =>
    `med en sjanse på ${say.percent(chance)} må noen avgjøre om det skal varmes`,
  "circuit-overloaded": ({ circuit, load_w, limit_w, share }, say) =>
    `${circuit} ville fått ${say.number(load_w)} W, mer enn de ${say.number(limit_w)} W som en varig last kan trekke (${say.percent(share)} av sikringen)`,
  "store-not-writable": () => "Lageret kan ikke skrives til: varmerne forblir av.",
  "broker-unreachable": () => "Megleren kan ikke nås: ingen føler høres.",
  "switch-no-answer": (values) => `Bryteren ${values.switch} svarer ikke.`,
  "switch-stays-off": (values, say) => `Bryteren ${values.switch} forblir av: ${say.finding(values.reason)}.`,
  "switch-cannot-be-used": (values) => `${values.switch} kan ikke styres: ${values.error}`,
  "aircraft-not-worked-out": ({ aircraft, error }) => `${aircraft} kunne ikke regnes ut: ${error}`,
  "no-estimate": ({ aircraft, reason }, say) => `ikke noe anslag for ${aircraft}: ${say.finding(reason)}`,
  "no-plan": ({ aircraft, reason }, say) => `ingen plan for ${aircraft}: ${say.finding(reason)}`,
  "aircraft-was-started": () => "flyet ble startet",
  "departure-no-longer-wanted": () => "avgangen er ikke lenger ønsket",
  "heater-seems-cold": ({ chance }, say) =>
    `temperaturene ser ut som om varmeren ikke varmer; se på ledning, plugg og sikring (sjanse ${say.percent(chance)})`,
  "cover-seems-off": ({ chance }, say) =>
    `temperaturene ser ut som om dekket ikke er på (sjanse ${say.percent(chance)})`,
  "probe-seems-out": ({ chance }, say) =>
    `denne føleren passer ikke lenger med de andre; se om den har falt av delen sin (sjanse ${say.percent(chance)})`,
};
