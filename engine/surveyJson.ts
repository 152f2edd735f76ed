interface JsonSurvey {
  /** Deepest nesting of lists and objects. */
  readonly depth: number;
  /** Fields named twice in one object, which JSON.parse would let pass; at most REPEATED of them. */
  readonly repeated: readonly { readonly name: string; readonly line: number }[];
}

const REPEATED = 10;

/** One token of interest: a text, a bracket, a comma or a colon. */
const TOKENS = /"(?:[^"\\]|\\.)*"|[[\]{},:]|\n/gs;

/**
 * What JSON.parse does not tell about a text it has accepted: how deep it nests, and which fields occur twice. Only for
 * such text: on anything else the answer means nothing, and may take time that grows with the square of the length.
 */
export function surveyJson(text: string): JsonSurvey {
  const open: (Set<string> | undefined)[] = [];
  const repeated: { name: string; line: number }[] = [];
  let depth = 0;
  let line = 1;
  let last = '';
  for (const [token] of text.matchAll(TOKENS)) {
    if (token === '\n') {
      line++;
      continue;
    }
    if (token === '{' || token === '[') open.push(token === '{' ? new Set() : undefined);
    if (token === '}' || token === ']') open.pop();
    depth = Math.max(depth, open.length);
    const names = open.at(-1);
    if (token === ':' && names !== undefined && last.startsWith('"')) {
      const name = unquote(last);
      if (names.has(name) && repeated.length < REPEATED) repeated.push({ name: name.slice(0, 40), line });
      names.add(name);
    }
    last = token;
  }
  return { depth, repeated };
}

function unquote(token: string): string {
  return String(JSON.parse(token));
}
