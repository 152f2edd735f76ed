export {
  FIRST_FEET,
  type ArrivalPaper,
  MemberPaper,
  TablePapers,
  type ControlsPaper,
  type FlightPaper,
  type LegPaper,
  type MarginPaper,
  type ScorecardPaper,
  type SeatPaper,
  type TouchdownPaper,
} from './memberPaper.ts';
export { createPaper, writePaper } from './writePaper.ts';
