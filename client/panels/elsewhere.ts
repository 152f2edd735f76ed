/** Where other devices find this page, when its own address means something else to each of them. */

/** Whether an address names, on every machine, that very machine. */
export function isOnlyHere(host: string): boolean {
  return host === 'localhost' || host.endsWith('.localhost') || host === '[::1]' || host.startsWith('127.');
}

/** The first address at which the server says that the network reaches it; undefined where it knows none, or does not say. */
export async function reachableOrigin(): Promise<string | undefined> {
  try {
    const answer = await fetch('./api/origins');
    const told: unknown = answer.ok ? await answer.json() : undefined;
    if (typeof told !== 'object' || told === null || !('origins' in told) || !Array.isArray(told.origins))
      return undefined;
    const [first]: readonly unknown[] = told.origins;
    return typeof first === 'string' && URL.canParse(first) ? first : undefined;
  } catch {
    return undefined;
  }
}
