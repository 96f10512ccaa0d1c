import type { LinkSlopes } from "./laws.js";
import type { LinkGroup, ModulatedLink, SlopeTargets } from "./links.js";

/** Adds to both slopes of a link what comes through the film factor of its mean temperature. */
export function addFilmSlopes(
  { link, from, to, film }: ModulatedLink,
  members: number,
  temp: Float64Array,
  { flow, byFrom, byTo }: LinkSlopes,
): void {
  if (film === undefined) return;
  for (let m = 0; m < members; m++) {
    const mean = 0.5 * (temp[from + m] + temp[to + m]);
    const byMean = (0.5 * flow[link + m] * film.slope(mean)) / film.value(mean);
    byFrom[link + m] += byMean;
    byTo[link + m] += byMean;
  }
}

/** Adds a link's flow to the net heat of its ends and its slopes, per heat capacity, to the Jacobian. */
export function addSlopes(
  { link, from, to, fromFrom, fromTo, toFrom, toTo }: SlopeTargets,
  members: number,
  { flow, byFrom, byTo }: LinkSlopes,
  inverseCapacity: Float64Array,
  net: Float64Array,
  jacobian: Float64Array,
): void {
  for (let m = 0; m < members; m++) {
    const l = (link + m) | 0;
    net[(from + m) | 0] -= flow[l];
    net[(to + m) | 0] += flow[l];
    if (fromFrom >= 0) jacobian[(fromFrom + m) | 0] -= byFrom[l] * inverseCapacity[(from + m) | 0];
    if (toTo >= 0) jacobian[(toTo + m) | 0] += byTo[l] * inverseCapacity[(to + m) | 0];
    if (fromTo >= 0) {
      jacobian[(fromTo + m) | 0] -= byTo[l] * inverseCapacity[(from + m) | 0];
      jacobian[(toFrom + m) | 0] += byFrom[l] * inverseCapacity[(to + m) | 0];
    }
  }
}

/** Adds the links' change of flow in time, as their ends and winds that are inputs change at `rate`, to their ends. */
export function addRates(
  { count, link, from, to, wind }: LinkGroup,
  members: number,
  { byFrom, byTo, byWind }: LinkSlopes,
  rate: Float64Array,
  net: Float64Array,
): void {
  for (let l = 0; l < count; l++) {
    for (let m = 0; m < members; m++) {
      const o = link[l] + m;
      const a = from[l] + m;
      const b = to[l] + m;
      const change = byFrom[o] * rate[a] + byTo[o] * rate[b] + byWind[o] * rate[wind[l] + m];
      net[a] -= change;
      net[b] += change;
    }
  }
}
