import { kelvinFromCelsius, METRES_PER_SECOND_OF_KNOT, SECONDS_OF_HOUR } from "../units/index.js";
import type { WeatherIssue } from "./series.js";

// Wind, sky and temperature groups are read here and not taken from the parser library: it reads a wind in KMH as
// knots, loses "P99KT", loses the temperature of "M27/" and drops a malformed "201/16" without a word.

const WIND = /^(?:\d{3}|VRB|\/{3})P?(\d{2,3}|\/\/)(?:GP?(?:\d{2,3}|\/\/))?(KT|MPS|KMH|KM\/H)$/;
const CLOUD_LAYER = /^(FEW|SCT|BKN|OVC)(?:\d{3}|\/{3})(?:CB|TCU|\/{3})?$/;
const VERTICAL_VISIBILITY = /^VV(?:\d{3}|\/{3})$/;
const CLEAR = new Set(["CAVOK", "SKC", "CLR", "NSC", "NCD"]);
const TEMPERATURE = /^(M?\d{2})\/(M?\d{2})?(?:\/\/|XX|M)?$/;
const TEMPERATURE_LIKE = /^M?\d+\/M?\d*$/;

/** [m/s] of one unit of the wind group. */
const WIND_UNIT: Readonly<Record<string, number>> = {
  KT: METRES_PER_SECOND_OF_KNOT,
  MPS: 1,
  KMH: 1000 / SECONDS_OF_HOUR,
  "KM/H": 1000 / SECONDS_OF_HOUR,
};

/**
 * [0..1] sky covered by a layer: the middle of FEW 1-2, SCT 3-4, BKN 5-7 and OVC 8 oktas
 * (WMO-No. 306 Volume I.1, FM 15, 15.9.1.1, from memory).
 */
const LAYER_COVER: Readonly<Record<string, number>> = { FEW: 1.5 / 8, SCT: 3.5 / 8, BKN: 6 / 8, OVC: 1 };

/** [m/s] mean wind of the first wind group; undefined where there is none or it is "/////KT". Gusts are not used: the mean drives heat loss. */
export function windOfGroups(groups: readonly string[]): number | undefined {
  for (const group of groups) {
    const match = WIND.exec(group);
    if (match === null) continue;
    const [, speed, unit] = match;
    return speed === "//" ? undefined : Number(speed) * WIND_UNIT[unit!]!;
  }
  return undefined;
}

/**
 * [0..1] cloud cover of the sky groups: the largest layer (a lower bound of the total, so the cooling side), 1 under
 * a vertical visibility, 0 for CAVOK, SKC, CLR, NSC and NCD although these say nothing of high cloud (also the
 * cooling side); undefined where no sky group is given or none was detected ("//////").
 */
export function cloudOfGroups(groups: readonly string[]): number | undefined {
  let cover: number | undefined;
  for (const group of groups) {
    const layer = CLOUD_LAYER.exec(group)?.[1];
    if (layer !== undefined) cover = Math.max(cover ?? 0, LAYER_COVER[layer]!);
    else if (VERTICAL_VISIBILITY.test(group)) cover = 1;
    else if (CLEAR.has(group)) cover ??= 0;
  }
  return cover;
}

/** Air and dew point [°C, whole degrees] of the group "M27/M30", either missing where the report has slashes; an issue where a group looks like one but is not. */
export function temperatureOfGroups(
  groups: readonly string[],
): { celsius: number | undefined; dewPointCelsius: number | undefined } | WeatherIssue {
  for (const group of groups) {
    const match = TEMPERATURE.exec(group);
    if (match !== null) {
      return {
        celsius: celsiusOf(match[1]!),
        dewPointCelsius: match[2] === undefined ? undefined : celsiusOf(match[2]),
      };
    }
    if (TEMPERATURE_LIKE.test(group)) {
      return { place: `group ${group}`, expected: "air and dew point such as M27/M30", received: group };
    }
  }
  return { celsius: undefined, dewPointCelsius: undefined };
}

/** [K] of a two-figure temperature with M for minus ("M00" is a reading just below zero, rounded to 0). */
export function kelvinOfGroup(text: string): number {
  return kelvinFromCelsius(celsiusOf(text));
}

/** Whether an air temperature [K] is believable (-75 to 60 °C, wider than any record away from the Antarctic plateau; project judgement). */
export function isBelievableAir(tempAir: number): boolean {
  return tempAir >= kelvinFromCelsius(-75) && tempAir <= kelvinFromCelsius(60);
}

function celsiusOf(text: string): number {
  // Adding 0 turns the -0 of "M00" into 0.
  return (text.startsWith("M") ? -Number(text.slice(1)) : Number(text)) + 0;
}
