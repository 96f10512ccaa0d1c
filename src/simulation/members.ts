/**
 * Drawn cases that the chances of a plan are counted over where no other number is asked for: a chance of nine in ten then
 * has a standard error of 0.02, and a departure that is dragged is decided on while somebody looks.
 */
export const USUAL_MEMBERS = 200;
