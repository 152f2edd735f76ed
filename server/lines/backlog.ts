/** What may wait to be read at the other end for longer than a moment [byte]. */
const USUAL_BACKLOG = 64 * 1024;

/** How long more than that may wait [ms], and what is too much at once [byte]: the record of a long session fits. */
const BACKLOG_MS = 10_000;
const LARGEST_BACKLOG = 4 * 1024 * 1024;

/** Says of a line, each time something is to be sent on it, whether too much is left unread: a slow line gets its time, one that nobody reads keeps little. */
export function createBacklogWatch(): (waitingBytes: number, nowMs: number) => boolean {
  let crowdedSinceMs: number | undefined;
  return (waitingBytes, nowMs) => {
    if (waitingBytes <= USUAL_BACKLOG) crowdedSinceMs = undefined;
    else crowdedSinceMs ??= nowMs;
    return waitingBytes > LARGEST_BACKLOG || nowMs - (crowdedSinceMs ?? nowMs) > BACKLOG_MS;
  };
}
