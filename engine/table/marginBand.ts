import type { Callout, MarginBand } from './scorecardTypes.ts';

/**
 * Highest utilisation of each band, in rising order [-]. Chosen so that of plausible arrivals, by what the live margin said three seconds before, less
 * than 1 in 1000 fall in desired and less than 1 in 100 in adequate, for each shipped lander: counts and intervals in README.md, "Bands", from
 * tests/validation/table/writeBands.ts. The words are the product's.
 */
export const BAND_LIMITS: Readonly<Record<Exclude<MarginBand, 'outside'>, number>> = {
  desired: 0.6,
  adequate: 0.85,
  thin: 1,
};

/** The band of a utilisation U = actual / limit. */
export function bandOf(utilisation: number): MarginBand {
  if (utilisation <= BAND_LIMITS.desired) return 'desired';
  if (utilisation <= BAND_LIMITS.adequate) return 'adequate';
  return utilisation <= BAND_LIMITS.thin ? 'thin' : 'outside';
}

/** What a crew says of a band. */
export function calloutOf(band: MarginBand): Callout {
  if (band === 'outside') return 'outside';
  return band === 'thin' ? 'close' : 'inside';
}
