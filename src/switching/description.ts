// What the machine has to know of a switch and a probe. The logbook's set-up describes both in these keys; they are
// written here by shape, so that the logbook can call the checks of this folder.

export interface RequestDescription {
  readonly method: "GET" | "POST" | "PUT" | "PATCH";
  readonly url: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
}

export interface MqttDescription {
  readonly kind: "mqtt";
  /** What the device is told; `keep`: the broker keeps off for a device that comes back later. */
  readonly say: {
    readonly topic: string;
    readonly on: string;
    readonly off: string;
    readonly keep?: boolean;
  };
  /** What the device tells of itself. */
  readonly hear: {
    readonly topic: string;
    readonly pointer?: string;
    readonly on: string;
    readonly off: string;
  };
  /** What makes the device tell it, for devices that speak only when it changes. */
  readonly ask?: { readonly topic: string; readonly payload: string };
}

export interface HttpDescription {
  readonly kind: "http";
  readonly say: { readonly on: RequestDescription; readonly off: RequestDescription };
  /** The request that asks for it, and where in the answer the device tells it. */
  readonly hear: {
    readonly request: RequestDescription;
    readonly pointer?: string;
    readonly on: string;
    readonly off: string;
  };
}

export interface SwitchDescription {
  readonly id: string;
  readonly longest_on_min: number;
  readonly rest_min?: number;
  readonly on_time_s?: number;
  readonly confirm_within_s?: number;
  readonly via: MqttDescription | HttpDescription;
}

/** Where the on-time goes in an on command. */
export const ON_TIME_PLACE = "{on_time_s}";

/** True when the on command itself carries the on-time, so that every command can shorten it. */
export function sendsOnTime(via: SwitchDescription["via"]): boolean {
  const texts = via.kind === "mqtt" ? [via.say.on] : requestTexts(via.say.on);
  return texts.some((text) => text.includes(ON_TIME_PLACE));
}

export function requestTexts(request: RequestDescription): readonly string[] {
  return [request.url, ...Object.values(request.headers ?? {}), request.body ?? ""];
}
