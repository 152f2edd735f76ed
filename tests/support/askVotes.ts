/** The votes of a hall as a phone or a presenter asks for them, without a browser. */

export interface HallHeaders {
  readonly code?: string;
  /** Of the presenter. */
  readonly key?: string;
  /** A phone that flies. */
  readonly phone?: string;
}

/** All that may be in an answer. */
export interface HallAnswer {
  readonly code: string;
  readonly key: string;
  readonly number: number;
  readonly error: string;
  readonly isOpen: boolean;
  readonly counts?: readonly number[];
  readonly startsInMs?: number;
  readonly flown?: { readonly landings: readonly unknown[]; readonly inAir: number; readonly left: number };
}

export async function askVotes(
  origin: string,
  path: string,
  body?: object,
  as: HallHeaders = {},
): Promise<{ readonly status: number; readonly json: HallAnswer }> {
  const answer = await fetch(`${origin}/api/votes${path}`, {
    ...(body !== undefined && { method: 'POST', body: JSON.stringify(body) }),
    headers: {
      'content-type': 'application/json',
      ...Object.fromEntries(Object.entries(as).map(([name, value]) => [`x-vote-${name}`, value])),
    },
  });
  return { status: answer.status, json: (await answer.json()) as HallAnswer };
}

/** The word by which a phone is known. */
export function voterOf(i: number): string {
  return `voter${String(i).padStart(12, '0')}`;
}
