import type { HeaterSwitch } from "../logbook/index.js";
import type { OnOff } from "../switching/index.js";
import { errorText, type Log, type SwitchDevice } from "./device.js";
import type { SwitchDriver } from "./driver.js";
import { type Fetch, type Secrets, secretsFor, sentRequest } from "./http-request.js";
import { stateFrom } from "./payload.js";

export const httpSwitches: SwitchDriver = {
  kind: "http",
  connect: (of, { environment, onLog }) =>
    createHttpSwitch(of, { fetch, secrets: secretsFor(of, environment), onLog }),
};

interface HttpSwitchOptions {
  readonly fetch: Fetch;
  readonly secrets: Secrets;
  /** [s] The state is asked for so often; 10 where left out. */
  readonly pollEveryS?: number;
  /** [s] for one request; 5 where left out. */
  readonly timeoutS?: number;
  readonly onLog?: Log;
}

/** [s] After a command the state is asked for at once and after these. */
const AFTER_COMMAND_S = [0, 1, 2, 4];
/** So many questions without an answer in a row, and the device is offline. */
const UNANSWERED = 3;

/** A switch that takes plain HTTP requests. It must have an on-time of its own: nobody else switches it off for us. @internal for tests */
export function createHttpSwitch(of: HeaterSwitch, options: HttpSwitchOptions): SwitchDevice {
  const { fetch, secrets, pollEveryS = 10, timeoutS = 5, onLog } = options;
  const { via } = of;
  if (via.kind !== "http") throw new Error(`invalid switch ${of.id}: ${via.kind} (expected http)`);
  const stateHearers: ((is: OnOff) => void)[] = [];
  const linkHearers: ((online: boolean) => void)[] = [];
  /** Counts the beginnings and ends of commands: an answer asked for before the last of them is stale. */
  let commands = 0;
  let inFlight: AbortController | undefined;
  let unanswered = 0;
  let online = false;
  let closed = false;
  const timers = new Set<NodeJS.Timeout>();

  const sayLink = (now: boolean) => {
    if (now === online) return;
    online = now;
    for (const hear of linkHearers) hear(now);
  };
  const failed = (text: string) => {
    unanswered++;
    onLog?.("warning", text);
    if (unanswered >= UNANSWERED) sayLink(false);
  };
  const ask = async () => {
    if (closed) return;
    const asked = commands;
    try {
      const signal = AbortSignal.timeout(timeoutS * 1000);
      const text = await sentRequest(via.hear.request, { secrets }, { fetch, signal });
      if (asked !== commands || closed) return;
      const is = stateFrom(text, via.hear.pointer, via.hear);
      if (typeof is !== "string") return failed(`${of.id}: expected ${is.expected}, received ${is.received}`);
      unanswered = 0;
      sayLink(true);
      for (const hear of stateHearers) hear(is);
    } catch (error) {
      failed(errorText(error));
    }
  };
  const later = (seconds: number) => {
    const timer = setTimeout(() => {
      timers.delete(timer);
      void ask();
    }, seconds * 1000);
    timers.add(timer);
  };
  const polling = setInterval(() => void ask(), pollEveryS * 1000);
  later(0);

  return {
    async command(to, { onTimeS } = {}) {
      commands++;
      // Off does not wait for an on that is still under way.
      inFlight?.abort();
      const abort = new AbortController();
      inFlight = abort;
      try {
        const signal = AbortSignal.any([abort.signal, AbortSignal.timeout(timeoutS * 1000)]);
        const filling = { secrets, ...(onTimeS === undefined ? {} : { onTimeS }) };
        await sentRequest(to === "on" ? via.say.on : via.say.off, filling, { fetch, signal });
      } finally {
        if (inFlight === abort) inFlight = undefined;
        commands++;
        if (!closed) for (const seconds of AFTER_COMMAND_S) later(seconds);
      }
    },
    onState: (hear) => void stateHearers.push(hear),
    onLink(hear) {
      linkHearers.push(hear);
      if (online) hear(true);
    },
    async close() {
      closed = true;
      clearInterval(polling);
      for (const timer of timers) clearTimeout(timer);
    },
  };
}
