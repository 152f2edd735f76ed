/** The platform's own functions, taken before the engine loads: its world puts its own over Math.sin and others. */
export const { sin: platformSin, atan: platformAtan } = Math;
