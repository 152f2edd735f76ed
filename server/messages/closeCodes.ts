/** Why a line was closed, as WebSocket close codes of our own (4000 to 4010 belong to the room library). */
export const CLOSE_CODES = {
  /** The same place was opened in another window: this one is not to come back by itself. */
  openedElsewhere: 4100,
  /** A fault of ours stopped this table; the others run on. */
  fault: 4101,
  /** Whoever runs the table removed this member. */
  removed: 4102,
  /** The server is about to end; the table goes on when it has started again. */
  restarting: 4103,
  /** Nobody did anything here for a long time, or everybody was away and another table needed the room. */
  idle: 4104,
} as const;

/** Why a join was refused, as codes beside those of the room library (520 to 530). */
export const JOIN_CODES = {
  malformed: 400,
  unknownPlace: 410,
  tableFull: 409,
  notFacilitator: 403,
  noTableFree: 503,
  /** Attempts, tables, or wrong codes. */
  tooMany: 429,
  /** No table has this code. */
  unknownCode: 404,
} as const;
