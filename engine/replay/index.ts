/** Public door of recordings: making, reading and playing them back. */
export { hashSetup } from './hashSetup.ts';
export { formatRecording, MOST_TEXT, MOST_TICKS, parseRecording, parseRecordingText } from './parseRecording.ts';
export {
  createPlayback,
  playToEnd,
  stepPlayback,
  type Divergence,
  type Playback,
  type PlaybackRefusal,
} from './playback.ts';
export {
  finishRecording,
  recordInput,
  recordRun,
  recordState,
  startRecording,
  type PlanOrigin,
  type Recorder,
} from './recordDescent.ts';
export {
  MARK_EVERY,
  MARKED_FIELDS,
  PHYSICS_REVISION,
  RECORDING_FORMAT,
  type InputRun,
  type Mark,
  type MarkedField,
  type RecordedPlan,
  type Recording,
} from './recording.ts';
