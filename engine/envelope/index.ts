/** Public door of the velocity envelope. */
export { advanceEnvelope, createEnvelope, enterAnswer, envelopeProgress, pendingJobs, runJob } from './envelope.ts';
export { type Envelope, type EnvelopeJob, type EnvelopeJobAnswer } from './rounds.ts';
export { mapEnvelope, rowLimits, type EnvelopeMap, type RowEnd, type RowLimit } from './envelopeMap.ts';
export { ENVELOPE_CLASSES, yawDirections, type EnvelopeClass, type EnvelopeQuestion } from './envelopeQuestion.ts';
export { type SimulateEnvelope } from './worstDirection.ts';
