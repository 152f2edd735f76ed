/** Public door of looking back: clips, samples and statements of the last descent of a record. */
export { cutClip, type ClipCut, type ClipFrame } from './cutClip.ts';
export { logDescent, type DescentLog } from './logDescent.ts';
export type { Sample } from './sampleDescent.ts';
export { formatSamples, samplesCsv } from './samplesText.ts';
export { trackRun, type RunTrack, type TrackPoint } from './trackRun.ts';
