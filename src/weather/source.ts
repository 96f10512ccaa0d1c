import type { WeatherIssue } from "./series.js";

/** Text of weather for a station from wherever the user gets it. */
export interface WeatherSource {
  fetchText(request: WeatherRequest): Promise<WeatherTextReading>;
}

export interface WeatherRequest {
  /** Four-character location indicator. */
  readonly station: string;
  readonly kind: "METAR" | "TAF";
}

export type WeatherTextReading =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly issues: readonly WeatherIssue[] };

/** Gets the text behind a URL; the platform's fetch, a file or a recording. Timeouts and retries are its business. */
export type WeatherTransport = (url: string) => Promise<string>;

const STATION = /^[A-Z][A-Z0-9]{3}$/;

/**
 * A source that fills `{station}` and `{kind}` (metar or taf) into a URL template and asks `transport` for it, such
 * as "https://weather.example/{kind}?id={station}". A transport that fails or an empty reply is an issue.
 */
export function createTemplateSource(template: string, transport: WeatherTransport): WeatherSource {
  if (!/^https?:\/\//.test(template) || !template.includes("{station}")) {
    throw new RangeError(`invalid template: ${template} (expected a http or https URL with {station})`);
  }
  return {
    async fetchText({ station, kind }) {
      if (!STATION.test(station)) return refused("station", "four capitals or figures such as XXRV", station);
      const url = template.replaceAll("{station}", station).replaceAll("{kind}", kind.toLowerCase());
      try {
        const text = await transport(url);
        return text.trim() === "" ? refused(url, `a ${kind}`, "an empty reply") : { ok: true, text };
      } catch (error) {
        return refused(url, `a ${kind}`, error instanceof Error ? error.message : String(error));
      }
    },
  };
}

function refused(place: string, expected: string, received: string): WeatherTextReading {
  return { ok: false, issues: [{ place, expected, received }] };
}
