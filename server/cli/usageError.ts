/** The person at the command line asked for something that cannot be done: one line on stderr and exit code 2. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

/** Text from outside made fit for one line: control characters and line breaks become spaces, long text is cut. */
export function oneLine(text: string, longest = 400): string {
  // eslint-disable-next-line no-control-regex -- control characters are what is being removed
  const flat = text.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]+/g, ' ').trim();
  return flat.length <= longest ? flat : `${flat.slice(0, longest - 1)}…`;
}
