import { createProblemList, report } from '../fieldReader.ts';
import { refuse, type FieldProblem, type Result } from '../result.ts';
import type { Lander } from './lander.ts';
import { DEEPEST_NESTING, MOST_BYTES } from './landerRanges.ts';
import { parseLander } from './parseLander.ts';
import { surveyJson } from './surveyJson.ts';

/** The lander that the text of a file describes. Its size is looked at before anything else. */
export function parseLanderText(text: string): Result<Lander, readonly FieldProblem[]> {
  const list = createProblemList('lander');
  const bytes = bytesUpTo(text, MOST_BYTES);
  if (bytes === undefined) {
    report(list, 'too-large', { path: '', expected: `at most ${MOST_BYTES} bytes`, came: 'more' });
    return refuse(list.problems);
  }
  const json = parseJson(text);
  if (!json.ok) {
    report(list, 'not-json', { path: '', expected: 'JSON text', came: json.error });
    return refuse(list.problems);
  }
  const survey = surveyJson(text);
  if (survey.depth > DEEPEST_NESTING) {
    const expected = `at most ${DEEPEST_NESTING} levels of lists and objects`;
    report(list, 'too-deep', { path: '', expected, came: String(survey.depth) });
    return refuse(list.problems);
  }
  for (const { name, line } of survey.repeated) {
    const came = `${JSON.stringify(name)} again in line ${line}`;
    report(list, 'repeated-field', { path: '', expected: 'each field of an object once', came });
  }
  return list.problems.length > 0 ? refuse(list.problems) : parseLander(json.value);
}

/** Length in UTF-8, or undefined when it is more than a budget; text past the budget is not looked at. */
function bytesUpTo(text: string, budget: number): number | undefined {
  let bytes = 0;
  for (let index = 0; index < text.length; index++) {
    const unit = text.charCodeAt(index);
    // each half of a surrogate pair stands for two of its four bytes
    const wide = unit >= 0xd800 && unit < 0xe000 ? 2 : 3;
    bytes += unit < 0x80 ? 1 : unit < 0x800 ? 2 : wide;
    if (bytes > budget) return undefined;
  }
  return bytes;
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
