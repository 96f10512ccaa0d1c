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
  readonly command_topic: string;
  readonly on: string;
  readonly off: string;
  readonly retain?: boolean;
  readonly state_topic: string;
  readonly state_pointer?: string;
  readonly state_on: string;
  readonly state_off: string;
  /** What makes the device say its state, for devices that speak only when it changes. */
  readonly ask?: { readonly topic: string; readonly payload: string };
}

export interface HttpDescription {
  readonly kind: "http";
  readonly on: RequestDescription;
  readonly off: RequestDescription;
  readonly state: {
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
  return onTexts(via).some((text) => text.includes(ON_TIME_PLACE));
}

/** Every text of the on command that may carry places to fill in. */
export function onTexts(via: SwitchDescription["via"]): readonly string[] {
  return via.kind === "mqtt" ? [via.on] : requestTexts(via.on);
}

export function requestTexts(request: RequestDescription): readonly string[] {
  return [request.url, ...Object.values(request.headers ?? {}), request.body ?? ""];
}
