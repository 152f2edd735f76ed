export { parseChoice } from './choice.ts';
export { CLOSE_CODES, JOIN_CODES } from './closeCodes.ts';
export { parseCommand, type CommandAnswer } from './command.ts';
export { parseEntering, type EnteringBody, type EnteringOptions, type JoinOptions } from './join.ts';
export type { ListedRun } from './listedRun.ts';
export { packFrames, unpackFrames } from './packet.ts';
export {
  LARGEST_WRITE,
  LINE_ENDS,
  LINE_HEADERS,
  LINE_PATHS,
  LONGEST_READ_MS,
  type LineOpening,
  type OpenedLine,
  type Reading,
} from './requestLine.ts';
export type { Welcome } from './welcome.ts';
