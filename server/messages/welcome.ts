/** The message 'welcome': the first thing a client gets, each time it connects. */
export interface Welcome {
  readonly memberId: string;
  /** Brings this member, and nobody else, back to the same place. */
  readonly resume: string;
  /** Six letters, without the space. */
  readonly code: string;
  /** How long the place is kept after the line drops [s]. */
  readonly seatKeptSeconds: number;
  /** Opens this run in the logbook; for whoever runs the table. */
  readonly runKey?: string;
}
