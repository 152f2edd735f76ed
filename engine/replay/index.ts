/** Public door of recordings: making, reading and playing them back. */
export { hashSetup } from './hashSetup.ts';
export { formatRecording, parseRecording, parseRecordingText } from './parseRecording.ts';
export { createPlayback, playToEnd, stepPlayback, type Divergence } from './playback.ts';
export { finishRecording, recordInput, recordRun, recordState, startRecording } from './recordDescent.ts';
export { MARK_EVERY, PHYSICS_REVISION, type InputRun, type Recording } from './recording.ts';
