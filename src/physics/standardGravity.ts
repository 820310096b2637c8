/** Standard gravity, m/s², exact (NIST SP 811, B.8). */
export const standardGravity = 9.80665;
