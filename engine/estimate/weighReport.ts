import type { Reading } from '../sensors/reading.ts';
import { TIMINGS } from '../sensors/timings.ts';
import { TICK_RATE } from '../world/constants.ts';
import { addVariance, measureState, varianceAlong } from './covariance.ts';
import { REMEMBERED, type Estimate } from './estimate.ts';
import { expectAltimeter } from './expectAltimeter.ts';
import { createExpectation, type Expect } from './expectation.ts';
import { expectAttitude } from './expectAttitude.ts';
import { expectCamera } from './expectCamera.ts';
import { expectRadar } from './expectRadar.ts';
import { noteReport, type SourceTrack } from './sourceTrack.ts';
import { STATES } from './state.ts';

/** The sources that the filter weighs against what it believes. */
export const WEIGHED = ['altimeter', 'velocityRadar', 'attitudeReference', 'surfaceCamera'] as const;
type WeighedSource = (typeof WEIGHED)[number];

/** A report farther off than this many standard deviations is left out [-]. Of good ones 6 in 100,000 are. */
export const GATE = 4;

/**
 * The filter gives in to a source that is accepted, calls itself valid and yet stays outside the gate for so long [tick]: 4 s. It then
 * widens its own uncertainty until the report is inside. Without this, one wrong source that was believed first would lock the right ones out for good;
 * with it a wrong source that nobody rejects is believed in the end. That is what the crew's judgment is for.
 */
const PATIENCE = 4 * TICK_RATE;

const EXPECT: Readonly<Record<WeighedSource, Expect>> = {
  altimeter: expectAltimeter,
  velocityRadar: expectRadar,
  attitudeReference: expectAttitude,
  surfaceCamera: expectCamera,
};

/** Scratch, overwritten before each use. */
const EXPECTED = createExpectation();
const GAIN = new Float64Array(STATES);

/**
 * Holds a report that has just come against what was believed when its sample was taken, notes by how much it differs, and, if it `mayBeUsed`
 * and is inside the gate, takes it into the estimate. Samples are at most LONGEST_LATENCY old: over so short a time an error of
 * the past is taken as the error of now, and a correction is laid on what is remembered too.
 */
export function weighReport(estimate: Estimate, source: WeighedSource, reading: Reading, mayBeUsed: boolean): void {
  const track = estimate.tracks[source];
  track.isUsed = false;
  if (!reading.isValid) return;
  const sampleTick = estimate.tick - TIMINGS[source].latency;
  const at = (((sampleTick % REMEMBERED) + REMEMBERED) % REMEMBERED) * STATES;
  if (!holdAgainst(estimate, source, reading, at)) return;
  const isInside = isInsideGate(track);
  noteReport(track, isInside, estimate.tick);
  if (!mayBeUsed) return;
  const givesIn = !isInside && estimate.tick - track.outsideSince >= PATIENCE;
  if (!isInside && !givesIn) return;
  if (givesIn) widen(estimate, source, at);
  for (let channel = 0; channel < track.innovation.length; channel++) take(estimate, source, reading, { channel, at });
  track.isUsed = true;
  track.usedTick = estimate.tick;
}

/** Writes innovation and its standard deviation of each channel; false where nothing can be expected. */
function holdAgainst(estimate: Estimate, source: WeighedSource, reading: Reading, at: number): boolean {
  const track = estimate.tracks[source];
  for (let channel = 0; channel < track.innovation.length; channel++) {
    if (!expect(estimate, source, channel, at)) return false;
    track.innovation[channel] = reading.values[channel]! - EXPECTED.value;
    track.deviation[channel] = Math.sqrt(varianceAlong(estimate.covariance, EXPECTED.row) + EXPECTED.variance);
  }
  return true;
}

function isInsideGate({ innovation, deviation }: SourceTrack): boolean {
  for (let channel = 0; channel < innovation.length; channel++)
    if (!(Math.abs(innovation[channel]!) <= GATE * deviation[channel]!)) return false;
  return true;
}

/** Makes the estimate so uncertain that each channel's difference is no surprise. */
function widen(estimate: Estimate, source: WeighedSource, at: number): void {
  const { innovation } = estimate.tracks[source];
  for (let channel = 0; channel < innovation.length; channel++) {
    expect(estimate, source, channel, at);
    addVariance(estimate.covariance, EXPECTED.blamed, innovation[channel]! * innovation[channel]!);
  }
}

/** One channel into mean and covariance; expected anew, since the channel before has moved the mean. */
function take(
  estimate: Estimate,
  source: WeighedSource,
  reading: Reading,
  { channel, at }: { readonly channel: number; readonly at: number },
): void {
  const { mean, past, covariance } = estimate;
  expect(estimate, source, channel, at);
  measureState(covariance, EXPECTED.row, EXPECTED.variance, GAIN);
  const innovation = reading.values[channel]! - EXPECTED.value;
  for (let state = 0; state < STATES; state++) {
    const correction = GAIN[state]! * innovation;
    mean[state]! += correction;
    for (let slot = state; slot < past.length; slot += STATES) past[slot]! += correction;
  }
}

/** Fills EXPECTED from the mean that starts at `at` among the remembered ones. */
function expect(estimate: Estimate, source: WeighedSource, channel: number, at: number): boolean {
  return EXPECT[source](estimate, at, EXPECTED, channel);
}
