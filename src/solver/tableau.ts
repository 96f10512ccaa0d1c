/** A Rosenbrock method of s stages, in the letters of Hairer & Wanner II, section IV.7; row i of `a` and `C` holds j < i. */
export interface Tableau {
  readonly gamma: number;
  readonly c: readonly number[];
  readonly d: readonly number[];
  readonly a: readonly (readonly number[])[];
  readonly C: readonly (readonly number[])[];
  /** Rows of the dense output, over the stages but the last. */
  readonly h: readonly [readonly number[], readonly number[]];
}

/**
 * Rosenbrock method RODAS4P2: order 4 (embedded 3), six stages, L-stable, stiffly accurate, made for semi-discretised
 * parabolic problems, so that little order is lost on stiff forcing; Steinebach, Improvement of Rosenbrock-Wanner method
 * RODASP, in: Progress in Differential-Algebraic Equations II, Springer 2020, pp. 165-184.
 * Digits as in the public implementation OrdinaryDiffEq.jl (Rodas4P2); the order conditions are tested. Written in the
 * transformed form of Hairer & Wanner, Solving Ordinary Differential Equations II, 2nd ed. 1996, section IV.7:
 *   (I/(hγ) - J) u_i = f(t + c_i h, y + Σ a_ij u_j) + Σ (C_ij/h) u_j + h d_i ∂f/∂t.
 * The state of the last stage plus its u is y_1, and that u is the error estimate.
 * Dense output, order 3: y(t + θh) = (1-θ) y + θ (y_1 + (1-θ)(k_1 + θ k_2)), k_1 = Σ h_1j u_j, k_2 = Σ h_2j u_j.
 */
export const RODAS4P2: Tableau = {
  gamma: 0.25,
  c: [0, 0.75, 0.321448134013046, 0.519745732277726, 1, 1],
  d: [0.25, -0.5, -0.189532918363016, 0.085612108792769, 0, 0],
  a: [
    [],
    [3],
    [0.906377755268814, -0.189707390391685],
    [3.758617027739064, 1.161741776019525, -0.849258085312803],
    [7.089566927282776, 4.573591406461604, -8.423496976860259, -0.959280113459775],
    [7.089566927282776, 4.573591406461604, -8.423496976860259, -0.959280113459775, 1],
  ],
  C: [
    [],
    [-12],
    [-6.354581592719008, 0.338972550544623],
    [-8.575016317114033, -7.606483992117508, 12.22499765012482],
    [-5.888975457523102, -8.157396617841821, 24.805546872612922, 12.790401512796979],
    [-4.408651676063871, -6.692003137674639, 24.625568527593117, 16.627521966636085, -5.714285714285718],
  ],
  h: [
    [-5.323528268423303, -10.042123754867493, 17.175254928256965, -5.079931171878093, -0.016185991706112],
    [6.984505741529879, 6.914061169603662, -0.849178943070653, 18.104410789349338, -3.516963011559032],
  ],
};
