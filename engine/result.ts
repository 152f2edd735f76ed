/** Outcome of an operation that can be refused: a checked value, or the reasons why there is none. */
export type Result<Value, Problem> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly error: Problem };

export function accept<Value>(value: Value): { readonly ok: true; readonly value: Value } {
  return { ok: true, value };
}

export function refuse<Problem>(error: Problem): { readonly ok: false; readonly error: Problem } {
  return { ok: false, error };
}

/** One thing wrong with foreign data: where it stands, what was expected there and what it got. */
export interface FieldProblem {
  /** Namespaced literal, such as 'lander/mass-out-of-range'. */
  readonly code: string;
  /** Path of the field from the root of the document, such as 'legs.footpads[2][0]'; '' is the root. */
  readonly path: string;
  /** Of the text, from 1, where the document came as text and its reader says so. */
  readonly line?: number;
  readonly expected: string;
  readonly came: string;
}

/** One line a person can act on. */
export function formatProblem(problem: FieldProblem): string {
  const where = problem.path === '' ? 'document' : problem.path;
  const line = problem.line === undefined ? '' : `line ${problem.line}, `;
  return `${line}${where}: expected ${problem.expected}, got ${problem.came}`;
}
