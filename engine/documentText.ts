import { report, type ProblemList } from './fieldReader.ts';
import { accept, refuse, type FieldProblem, type Result } from './result.ts';
import { surveyJson } from './surveyJson.ts';

/** What the text of one kind of document may take. */
export interface DocumentBudget {
  /** Largest document, in bytes of UTF-8. */
  readonly mostBytes: number;
  /** Deepest nesting of lists and objects. */
  readonly deepest: number;
}

/**
 * The JSON that the text of a foreign document holds. Its size is looked at before anything else; then nesting, and fields named
 * twice, which JSON.parse lets pass. What the JSON says is yet to be read.
 */
export function parseDocumentText(
  list: ProblemList,
  text: string,
  { mostBytes, deepest }: DocumentBudget,
): Result<unknown, readonly FieldProblem[]> {
  if (!fits(text, mostBytes)) {
    report(list, 'too-large', { path: '', expected: `at most ${mostBytes} bytes`, came: 'more' });
    return refuse(list.problems);
  }
  const json = parseJson(text);
  if (!json.ok) {
    report(list, 'not-json', { path: '', expected: 'JSON text', came: json.error });
    return refuse(list.problems);
  }
  const survey = surveyJson(text);
  if (survey.depth > deepest) {
    const expected = `at most ${deepest} levels of lists and objects`;
    report(list, 'too-deep', { path: '', expected, came: String(survey.depth) });
    return refuse(list.problems);
  }
  for (const { name, line } of survey.repeated) {
    const came = `${JSON.stringify(name)} again in line ${line}`;
    report(list, 'repeated-field', { path: '', expected: 'each field of an object once', came });
  }
  return list.problems.length > 0 ? refuse(list.problems) : accept(json.value);
}

/** Whether a text takes no more bytes of UTF-8 than a budget; text past the budget is not looked at. */
function fits(text: string, budget: number): boolean {
  let bytes = 0;
  for (let index = 0; index < text.length; index++) {
    const unit = text.charCodeAt(index);
    // each half of a surrogate pair stands for two of its four bytes
    const wide = unit >= 0xd800 && unit < 0xe000 ? 2 : 3;
    bytes += unit < 0x80 ? 1 : unit < 0x800 ? 2 : wide;
    if (bytes > budget) return false;
  }
  return true;
}

/** The words of the syntax error are the platform's own and may differ between browsers; nothing depends on them. */
function parseJson(text: string): Result<unknown, string> {
  try {
    return { ok: true, value: JSON.parse(text) as unknown };
  } catch (error) {
    const words = error instanceof Error ? error.message : 'a syntax error';
    return { ok: false, error: words.slice(0, 160) };
  }
}
