/** Streams of addressed numbers that faults draw from, one a source from each on; those of the sensors themselves start at 0. */
export const NOISE_STREAM = 100;
export const SPIKE_STREAM = 200;
