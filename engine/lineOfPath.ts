import { fieldPath } from './fieldReader.ts';
import type { FieldProblem } from './result.ts';

/** A token of JSON: a text, a sign, or a number or word. */
const TOKENS = /"(?:[^"\\]|\\.)*"|[[\]{},:]|\n|[^\s[\]{},:"]+/gs;

/** An object or a list that is open: where it stands, and which item or field is being read. */
interface Open {
  readonly path: string;
  readonly isList: boolean;
  item: number;
  name: string | undefined;
}

/** The same problems with the lines of their fields; a field that is missing has the line of what it is missing in. Only for text that JSON.parse has accepted. */
export function withLines(text: string, problems: readonly FieldProblem[]): readonly FieldProblem[] {
  const lines = linesByPath(text);
  return problems.map((problem) => ({ ...problem, line: lineOf(lines, problem.path) }));
}

function lineOf(lines: ReadonlyMap<string, number>, path: string): number {
  for (let at = path; at !== ''; at = at.replace(/(?:^|\.)\w+$|\[[^[]*\]$/, '')) {
    const line = lines.get(at);
    if (line !== undefined) return line;
    if (!/(?:^|\.)\w+$|\[[^[]*\]$/.test(at)) break;
  }
  return 1;
}

/** The line on which each field begins with its name, and each item with its first token. */
function linesByPath(text: string): ReadonlyMap<string, number> {
  const lines = new Map<string, number>();
  const open: Open[] = [];
  let line = 1;
  let isName = false;
  for (const [token] of text.matchAll(TOKENS)) {
    const inside = open.at(-1);
    if (token === '\n') line++;
    else if (token === ']' || token === '}') open.pop();
    else if (token === ',') {
      if (inside !== undefined) inside.item += 1;
      isName = inside?.isList === false;
    } else if (token === ':') isName = false;
    else if (isName && inside !== undefined) {
      inside.name = String(JSON.parse(token));
      note(lines, pathOf(inside), line);
    } else {
      const path = inside === undefined ? '' : pathOf(inside);
      if (inside?.isList !== false) note(lines, path, line);
      if (token === '[' || token === '{') {
        open.push({ path, isList: token === '[', item: 0, name: undefined });
        isName = token === '{';
      }
    }
  }
  return lines;
}

function pathOf({ path, isList, item, name = '' }: Open): string {
  return isList ? `${path}[${item}]` : fieldPath(path, name);
}

function note(lines: Map<string, number>, path: string, line: number): void {
  if (!lines.has(path)) lines.set(path, line);
}
