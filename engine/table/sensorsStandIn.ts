import type { EstimateView, Judgments } from '../estimate/index.ts';
import { SOURCES, type Source } from '../sensors/index.ts';
import { TICK_RATE } from '../world/constants.ts';

/** What the stand-in at Sensors remembers. Plain data. */
export interface SensorsWatch {
  /** For how many ticks in a row each source has looked wrong. */
  readonly wrongFor: Partial<Record<Source, number>>;
  /** Running mean of what the camera disagrees with the estimate, over some seconds [standard deviations]. */
  readonly cameraMean: number;
}

export const NOTHING_WATCHED: SensorsWatch = { wrongFor: {}, cameraMean: 0 };

/** The stand-in takes so long from seeing a source go wrong to rejecting it [tick]: 2.5 s, a quick person; the estimate gives in to a wrong source after 4 s. */
const REACTION = 2.5 * TICK_RATE;
/** Time over which the disagreement of the coarse camera is averaged [tick]. */
const CAMERA_TIME = 4 * TICK_RATE;
/** A mean beyond this is no noise: of some 40 independent readings it would be 0.16 by standard deviation. */
const CAMERA_WRONG = 1;

/** A source looks wrong that the automatic check calls suspect, stale or failed; the radar also when camera and estimate drift apart for seconds. */
export function watchSources(watch: SensorsWatch, { sources }: EstimateView): SensorsWatch {
  const [camera = 0] =
    sources.surfaceCamera.isUsed || sources.surfaceCamera.state === 'valid' ? sources.surfaceCamera.disagreement : [];
  const cameraMean = watch.cameraMean + (camera - watch.cameraMean) / CAMERA_TIME;
  const wrongFor: Partial<Record<Source, number>> = {};
  for (const source of SOURCES) {
    const { state } = sources[source];
    const isWrong = state === 'suspect' || state === 'stale' || state === 'failed';
    const isOddOneOut = source === 'velocityRadar' && Math.abs(cameraMean) > CAMERA_WRONG;
    if (isWrong || isOddOneOut) wrongFor[source] = (watch.wrongFor[source] ?? 0) + 1;
  }
  return { wrongFor, cameraMean };
}

/** What the stand-in says now: it rejects what has looked wrong for its reaction time, and takes nothing back. */
export function judgeByWatch(watch: SensorsWatch, judgments: Judgments): Judgments {
  const wrong = SOURCES.filter(
    (source) => (watch.wrongFor[source] ?? 0) >= REACTION && judgments[source] !== 'rejected',
  );
  if (wrong.length === 0) return judgments;
  return { ...judgments, ...Object.fromEntries(wrong.map((source) => [source, 'rejected'])) };
}
