/**
 * Coefficients of the Rosenbrock method RODAS4P2: order 4 (embedded 3), six stages, L-stable, stiffly accurate, made for
 * semi-discretised parabolic problems, so that little order is lost on stiff forcing; Steinebach, Improvement of
 * Rosenbrock-Wanner method RODASP, in: Progress in Differential-Algebraic Equations II, Springer 2020, pp. 165-184.
 * Digits as in the public implementation OrdinaryDiffEq.jl (Rodas4P2); the order conditions are tested. Written in the
 * transformed form and letters of Hairer & Wanner, Solving Ordinary Differential Equations II, 2nd ed. 1996, section IV.7:
 *   (I/(hγ) - J) u_i = f(t + c_i h, y + Σ a_ij u_j) + Σ (C_ij/h) u_j + h d_i ∂f/∂t,   y_1 = y + Σ m_i u_i.
 * Stage 6 starts from the value a_5j u_j + u_5; y_1 adds u_6 to it, and u_6 is the error estimate.
 */
export const gamma = 0.25;

export const c2 = 0.75;
export const c3 = 0.321448134013046;
export const c4 = 0.519745732277726;

export const d1 = 0.25;
export const d2 = -0.5;
export const d3 = -0.189532918363016;
export const d4 = 0.085612108792769;

export const a21 = 3;
export const a31 = 0.906377755268814;
export const a32 = -0.189707390391685;
export const a41 = 3.758617027739064;
export const a42 = 1.161741776019525;
export const a43 = -0.849258085312803;
export const a51 = 7.089566927282776;
export const a52 = 4.573591406461604;
export const a53 = -8.423496976860259;
export const a54 = -0.959280113459775;

export const C21 = -12;
export const C31 = -6.354581592719008;
export const C32 = 0.338972550544623;
export const C41 = -8.575016317114033;
export const C42 = -7.606483992117508;
export const C43 = 12.22499765012482;
export const C51 = -5.888975457523102;
export const C52 = -8.157396617841821;
export const C53 = 24.805546872612922;
export const C54 = 12.790401512796979;
export const C61 = -4.408651676063871;
export const C62 = -6.692003137674639;
export const C63 = 24.625568527593117;
export const C64 = 16.627521966636085;
export const C65 = -5.714285714285718;

/** Dense output y(t + θh) = (1-θ) y + θ (y_1 + (1-θ)(k_1 + θ k_2)), k_1 = Σ h_2j u_j, k_2 = Σ h_3j u_j. Order 3. */
export const h21 = -5.323528268423303;
export const h22 = -10.042123754867493;
export const h23 = 17.175254928256965;
export const h24 = -5.079931171878093;
export const h25 = -0.016185991706112;
export const h31 = 6.984505741529879;
export const h32 = 6.914061169603662;
export const h33 = -0.849178943070653;
export const h34 = 18.104410789349338;
export const h35 = -3.516963011559032;
