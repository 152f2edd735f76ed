/** Public door of the velocity envelope. */
export { type BoundaryLine, type Crossing } from './boundary.ts';
export {
  advanceEnvelope,
  createEnvelope,
  DEFAULT_COARSE,
  ENVELOPE_STAGES,
  enterAnswer,
  envelopeProgress,
  pendingJobs,
  runJob,
  type Envelope,
  type EnvelopeJob,
  type EnvelopeJobAnswer,
  type EnvelopeStage,
} from './envelope.ts';
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
