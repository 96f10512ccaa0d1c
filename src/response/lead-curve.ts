/** Temperatures known for a few leads, read between: 0 without any lead. */
export interface LeadCurve {
  /** Adds the values of a lead [s] to `temps`; what lies between is worked out where it is asked for. */
  add(lead: number, temps: Float64Array): void;
}

/** [s] each twice the one before, as the rise from heat bends. */
const LEADS = [2700, 5400, 10_800, 21_600, 43_200, 86_400];
/** [s] scale over which an engine warms: between leads, a rise is read linearly in 1 - exp(-lead / scale). */
const WARMING = 14_400;

/**
 * @param most [s] the longest lead that there is time for
 * @param valuesAt [K] of a lead, parts x members
 */
export function createLeadCurve(most: number, valuesAt: (lead: number) => Float64Array): LeadCurve {
  const leads = [...LEADS.filter((lead) => lead < most), Math.min(most, LEADS[LEADS.length - 1])];
  const known = new Map<number, Float64Array>();
  const at = (lead: number): Float64Array => {
    const values = known.get(lead) ?? valuesAt(lead);
    known.set(lead, values);
    return values;
  };
  const bend = (lead: number) => 1 - Math.exp(-lead / WARMING);
  return {
    add(lead, temps) {
      if (!(lead > 0)) return;
      const i = leads.findIndex((l) => l >= lead);
      const k = i < 0 ? leads.length - 1 : i;
      const start = k === 0 ? 0 : bend(leads[k - 1]);
      const weight = Math.min(1, (bend(lead) - start) / (bend(leads[k]) - start));
      const after = at(leads[k]);
      const before = k === 0 || weight === 1 ? undefined : at(leads[k - 1]);
      for (let j = 0; j < temps.length; j++) {
        temps[j] += weight * after[j] + (before === undefined ? 0 : (1 - weight) * before[j]);
      }
    },
  };
}
