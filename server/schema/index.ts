export {
  FIRST_FEET,
  type ArrivalPaper,
  MemberPaper,
  TablePapers,
  type ContactPaper,
  type FlightPaper,
  type LegPaper,
  type LimitPaper,
  type MarginPaper,
  type PredictedPaper,
  type ScorecardPaper,
  type TouchdownPaper,
} from './memberPaper.ts';
export { createPaper, writePaper } from './writePaper.ts';
