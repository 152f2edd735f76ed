/** Public door of the velocity envelope. */
export { type BoundaryLine, type Crossing } from './boundary.ts';
export {
  advanceEnvelope,
  createEnvelope,
  DEFAULT_COARSE,
  enterAnswer,
  envelopeProgress,
  pendingJobs,
  runJob,
} from './envelope.ts';
export {
  ENVELOPE_STAGES,
  type Envelope,
  type EnvelopeJob,
  type EnvelopeJobAnswer,
  type EnvelopeStage,
} from './rounds.ts';
export {
  mapEnvelope,
  rowLimits,
  type EnvelopeMap,
  type EnvelopeNode,
  type NodeKnowledge,
  type RowEnd,
  type RowLimit,
} from './envelopeMap.ts';
export {
  ENVELOPE_CLASSES,
  nodeSpeeds,
  yawDirections,
  type EnvelopeClass,
  type EnvelopeDirection,
  type EnvelopeQuestion,
  type GridAxis,
} from './envelopeQuestion.ts';
export { touchdownToward, type EnvelopeAnswer, type NodeVerdict, type SimulateEnvelope } from './worstDirection.ts';
