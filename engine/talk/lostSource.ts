import type { SourceState } from '../estimate/index.ts';

/** A source that reports at all does so more often [s]. */
const SILENT_AFTER = 1;

/**
 * Whether a source has failed, or spoke once and is silent. One that reports that it cannot measure now, as a camera in dust or a radar out of its range, is not lost.
 */
export function isLost({ state, age }: { readonly state: SourceState; readonly age?: number | undefined }): boolean {
  return state === 'failed' || (state === 'no data' && isSilent(age));
}

/** `age` of its last sample [s]; undefined before there was one. */
export function isSilent(age: number | undefined): boolean {
  return age !== undefined && age >= SILENT_AFTER;
}
