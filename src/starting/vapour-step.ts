/** Something that exchanges vapour with the air of the case. */
export interface Exchange {
  /** [kg/(s Pa)] */
  readonly conductance: number;
  /** [Pa] at which it neither gives nor takes. */
  readonly pressure: number;
  /** [kg] most it can give. */
  readonly available: number;
  /** Whether it takes part at all. */
  readonly open: boolean;
}

export interface VapourStep {
  /** [Pa] vapour pressure at the end of the step, and its mean over it. */
  readonly end: number;
  readonly mean: number;
  /** [kg] given to the air by each exchange, negative when it took. */
  readonly given: number[];
}

/**
 * One step of C dp/dt = sum k_j (p_j - p) + sum q_i: p relaxes exponentially towards (sum k_j p_j + sum q_i)/sum k_j. An
 * exchange that would give more than it has gives just that, evenly (q_i), and the step is solved again.
 * @param capacity C [kg/Pa]
 * @param dt [s]
 */
export function settle(
  pressure: number,
  capacity: number,
  exchanges: readonly Exchange[],
  dt: number,
): VapourStep {
  const count = exchanges.length;
  const spent = new Uint8Array(count);
  const given = new Array<number>(count);
  for (;;) {
    let conductance = 0;
    let supply = 0;
    for (let i = 0; i < count; i++) {
      const exchange = exchanges[i]!;
      if (!exchange.open) continue;
      if (spent[i] === 1) supply += exchange.available / dt;
      else {
        conductance += exchange.conductance;
        supply += exchange.conductance * exchange.pressure;
      }
    }
    const { end, mean } = relaxed(pressure, capacity, conductance, supply, dt);
    let beyond = -1;
    for (let i = 0; i < count; i++) {
      const { open, available, conductance: own, pressure: level } = exchanges[i]!;
      if (!open) given[i] = 0;
      else given[i] = spent[i] === 1 ? available : own * (level - mean) * dt;
      if (beyond < 0 && spent[i] === 0 && given[i]! > available) beyond = i;
    }
    if (beyond < 0) return { end, mean, given };
    spent[beyond] = 1;
  }
}

/** C dp/dt = supply - conductance p. */
function relaxed(
  pressure: number,
  capacity: number,
  conductance: number,
  supply: number,
  dt: number,
): { end: number; mean: number } {
  const times = (conductance * dt) / capacity;
  if (!(times > 1e-9)) {
    const end = pressure + (supply * dt) / capacity;
    return { end, mean: (pressure + end) / 2 };
  }
  const level = supply / conductance;
  const left = -Math.expm1(-times);
  return {
    end: level + (pressure - level) * (1 - left),
    mean: level + ((pressure - level) * left) / times,
  };
}
