/** [m/s] of one knot, exact (1852 m in an hour). */
export const METRES_PER_SECOND_OF_KNOT = 1852 / 3600;
/** [m] of one foot, exact (international foot, 1959). */
export const METRES_OF_FOOT = 0.3048;
/** [Pa] of one pound-force per square inch (NIST SP 811, Appendix B). */
export const PASCAL_OF_PSI = 6894.757293168;
/** [J] of one kilowatt-hour, exact. */
export const JOULE_OF_KILOWATT_HOUR = 3.6e6;
export const SECONDS_OF_MINUTE = 60;
export const SECONDS_OF_HOUR = 3600;
/** [rad/s] of one revolution per minute, exact. */
export const RADIANS_PER_SECOND_OF_RPM = (2 * Math.PI) / 60;
/** [C] of one ampere-hour, exact. */
export const COULOMB_OF_AMPERE_HOUR = 3600;
