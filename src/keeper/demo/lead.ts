/** A made lead with a switch in it: what a real one with a renewable on-time does. */
export interface MadeLead {
  readonly isOn: boolean;
  command(to: "on" | "off"): void;
  /** The connection to the broker is gone: nobody watches. */
  lost(): void;
}

export interface LeadOptions {
  /** [ms] it stays on without being told again; for ever where undefined. */
  readonly onTime: number | undefined;
  /** Told of every state it takes, also of one it had. */
  readonly onState: (is: "on" | "off", why: string) => void;
}

export function makeLead({ onTime, onState }: LeadOptions): MadeLead {
  let isOn = false;
  let timer: NodeJS.Timeout | undefined;

  function off(why: string): void {
    clearTimeout(timer);
    isOn = false;
    onState("off", why);
  }

  return {
    get isOn() {
      return isOn;
    },
    command(to) {
      if (to === "off") return off("told to");
      clearTimeout(timer);
      if (onTime !== undefined)
        timer = setTimeout(() => off("its on-time ended and was not renewed"), onTime);
      isOn = true;
      onState("on", "told to");
    },
    lost() {
      if (isOn) off("the connection to the broker was lost");
    },
  };
}
