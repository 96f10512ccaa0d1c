import { LAPSE_STANDARD } from "../properties/index.js";
import { KELVIN_OF_ZERO_CELSIUS, requireInside } from "../units/index.js";

/** Measured or forecast temperatures aloft: altitudes [m above sea level], ascending, with air temperatures [K]. */
export interface Sounding {
  readonly altitude: readonly number[];
  readonly tempAir: readonly number[];
}

/** The climb after take-off. */
export interface Climb {
  /** [m above sea level] of the aerodrome and of the cruise. */
  readonly elevation: number;
  readonly cruiseAltitude: number;
  /** [m/s] of climb and of flight. */
  readonly rate: number;
  readonly airspeed: number;
  /** Temperatures aloft; the standard lapse from the ground's temperature when absent. */
  readonly sounding?: Sounding;
}

/** Air temperature with altitude over the aerodrome. */
export interface TemperatureProfile {
  /** [K] at `altitude` [m above sea level]. */
  tempAt(altitude: number): number;
  /** Corners, ascending: the aerodrome and the sounding's points above it. */
  readonly altitude: readonly number[];
}

export function requireClimb(climb: Climb): void {
  requireInside("climb.elevation", climb.elevation, -500, 5000, "m");
  requireInside("climb.cruiseAltitude", climb.cruiseAltitude, climb.elevation, 9000, "m");
  requireInside("climb.rate", climb.rate, 0.2, 20, "m/s");
  requireInside("climb.airspeed", climb.airspeed, 10, 150, "m/s");
  const { sounding } = climb;
  if (sounding === undefined) return;
  if (sounding.altitude.length === 0 || sounding.altitude.length !== sounding.tempAir.length) {
    throw new RangeError(
      `invalid climb.sounding: ${sounding.altitude.length} altitudes with ${sounding.tempAir.length} temperatures (expected as many, at least one)`,
    );
  }
  sounding.altitude.forEach((altitude, i) => {
    if (!(altitude > (sounding.altitude[i - 1] ?? -1000) && altitude <= 20_000)) {
      throw new RangeError(
        `invalid climb.sounding.altitude: ${altitude} (expected ascending, -1000 to 20000 m)`,
      );
    }
    requireInside(`climb.sounding.tempAir[${i}]`, sounding.tempAir[i], 193.15, 323.15, "K");
  });
}

/**
 * From `tempGround` [K] at the aerodrome straight through the sounding's points above it, and on from the last corner with the
 * standard lapse of 6.5 K/km (ISO 2533:1975). Without a sounding the standard lapse all the way: in winter the air aloft is
 * often warmer than that (inversion), so ask for a sounding.
 */
export function temperatureProfile(climb: Climb, tempGround: number): TemperatureProfile {
  const { elevation, sounding } = climb;
  const altitude = [elevation];
  const tempAir = [tempGround];
  sounding?.altitude.forEach((height, i) => {
    if (height <= elevation) return;
    altitude.push(height);
    tempAir.push(sounding.tempAir[i]);
  });
  return {
    altitude,
    tempAt(at) {
      if (at <= elevation) return tempGround;
      const above = altitude.findIndex((height) => height >= at);
      if (above < 0)
        return tempAir[tempAir.length - 1] - LAPSE_STANDARD * (at - altitude[altitude.length - 1]);
      const share = (at - altitude[above - 1]) / (altitude[above] - altitude[above - 1]);
      return tempAir[above - 1] + share * (tempAir[above] - tempAir[above - 1]);
    },
  };
}

/**
 * [m above sea level] lowest altitude at which the air is at or below 0 °C: the aerodrome itself in frost, undefined when the
 * profile stays above 0 °C up to `ceiling`.
 * @example freezingLevel(temperatureProfile(climbFromSeaLevel, 288.15), 5000) // 2307.69
 */
export function freezingLevel(profile: TemperatureProfile, ceiling: number): number | undefined {
  const corners = [...profile.altitude.filter((height) => height < ceiling), ceiling];
  for (const [i, height] of corners.entries()) {
    const here = profile.tempAt(height) - KELVIN_OF_ZERO_CELSIUS;
    if (here > 0) continue;
    if (i === 0) return height;
    const below = profile.tempAt(corners[i - 1]) - KELVIN_OF_ZERO_CELSIUS;
    return corners[i - 1] + (below / (below - here)) * (height - corners[i - 1]);
  }
  return undefined;
}

/** [K] coldest air between the aerodrome and `ceiling` [m above sea level]. */
export function coldestBelow(profile: TemperatureProfile, ceiling: number): number {
  const corners = [...profile.altitude.filter((height) => height < ceiling), ceiling];
  return Math.min(...corners.map((height) => profile.tempAt(height)));
}
