import type { DocumentBudget } from '../../engine/documentText.ts';
import { formatProblem, type FieldProblem, type Result } from '../../engine/result.ts';
import { readFile } from './readFile.ts';
import type { Report } from './report.ts';
import { oneLine, UsageError } from './usageError.ts';

/** A kind of file that people write by hand. */
export interface DocumentKind<Document> {
  readonly verb: string;
  /** Such as 'a drill'. */
  readonly what: string;
  readonly budget: DocumentBudget;
  readonly parse: (text: string) => Result<Document, readonly FieldProblem[]>;
  readonly resultsOf: (document: Document) => Report['results'];
  /** What is in it, in lines. */
  readonly textOf: (document: Document) => readonly string[];
}

/** What is in a file, or every problem with its line and field, which fails the command. */
export function checkDocument<Document>(file: string, kind: DocumentKind<Document>): Report {
  const { verb, what, budget, parse, resultsOf, textOf } = kind;
  const text = readFile(file, what, budget);
  if (text === undefined) throw new UsageError(`no file '${oneLine(file, 80)}'`);
  const parsed = parse(text);
  const inputs = { action: 'check', file };
  if (parsed.ok)
    return {
      verb,
      inputs,
      results: { problems: [], ...resultsOf(parsed.value) },
      text: textOf(parsed.value).join('\n'),
    };
  const problems = parsed.error;
  const count = problems.length === 1 ? 'one problem' : `${problems.length} problems`;
  const lines = problems.map((problem) => oneLine(formatProblem(problem), 400));
  const words = [`${oneLine(file, 80)}: ${count}`, ...lines].join('\n');
  return { verb, inputs, results: { problems }, text: words, failed: true };
}
