import type { RangedModel } from '../../engine/checks/index.ts';
import { CAUTION } from '../../engine/constants.ts';
import { formatCsv, type CsvTable } from '../../engine/csv.ts';

/** What a verb found: plain data for machines, a table for people. */
export interface Report {
  readonly verb: string;
  /** What was asked, in the units of the options, with every default filled in. */
  readonly inputs: Readonly<Record<string, unknown>>;
  /** The named results of the verb. */
  readonly results: Readonly<Record<string, unknown>>;
  /** The models that were asked, and what the checked range of each looks at beside the inputs, such as the shape of the body. */
  readonly ranged?: { readonly [Model in RangedModel]?: Readonly<Record<string, unknown>> };
  /** The same for people, without the caution. */
  readonly text: string;
  /** Its table for spreadsheets, where there is one. */
  readonly csv?: CsvTable;
  /** What its rows hold for, such as lander, world and slope: lines of comment above them. */
  readonly csvHead?: readonly string[];
  /** Long work was interrupted: what is given is what was done so far. Exit code 130. */
  readonly isPartial?: boolean;
  /** The verb ran, and what it checked does not hold: exit code 1. */
  readonly failed?: boolean;
}

/** Raised whenever a name in the JSON changes its meaning or goes away. */
const SCHEMA_VERSION = 1;

/** How a report is printed. */
export type ReportFormat = 'text' | 'json' | 'csv';

export async function formatReport(report: Report, format: ReportFormat): Promise<string> {
  const outside = report.ranged === undefined ? [] : await outsideOf(report.inputs, report.ranged);
  const warnings = outside.length === 0 ? [] : [`Outside checked range: ${outside.join('; ')}.`];
  if (format === 'csv')
    return formatCsv(report.csv ?? NO_TABLE, [...csvNotes(report), ...warnings, ...(report.csvHead ?? [])]);
  if (format !== 'json') return `${[report.text, ...warnings, CAUTION].join('\n\n')}\n`;
  const document = {
    schemaVersion: SCHEMA_VERSION,
    verb: report.verb,
    caution: CAUTION,
    inputs: report.inputs,
    ...report.results,
    ...(report.ranged !== undefined && { outsideCheckedRange: outside }),
  };
  return `${JSON.stringify(document, refuseNonFinite, 2)}\n`;
}

/** Brings in the checks only for a verb that has a checked range. What two models are checked for otherwise is said of each. */
async function outsideOf(inputs: Report['inputs'], ranged: NonNullable<Report['ranged']>): Promise<readonly string[]> {
  const { outsideCheckedRange, RANGED_MODELS } = await import('../../engine/checks/index.ts');
  const found = RANGED_MODELS.flatMap((model) => {
    const beside = ranged[model];
    const lines = beside === undefined ? [] : outsideCheckedRange(model, { ...inputs, ...beside });
    return lines.map((line) => ({ line, model, input: line.split(', checked from ')[0] }));
  });
  const differs = ({ line, input }: (typeof found)[number]): boolean =>
    found.some((other) => other.input === input && other.line !== line);
  return [...new Set(found.map((each) => (differs(each) ? `${each.line} in the ${each.model}` : each.line)))];
}

const NO_TABLE: CsvTable = { names: [], rows: [] };

/** What rows alone do not say: that they are not all, or why there are none. */
function csvNotes({ csv, isPartial, text }: Report): readonly string[] {
  if (csv === undefined || csv.rows.length === 0) return text.split('\n');
  return isPartial === true ? ['PARTIAL: stopped before it was done.'] : [];
}

/** JSON has no NaN and no infinity: `stringify` would write null in silence. */
function refuseNonFinite(key: string, value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`Broken contract: ${key} is ${value}`);
  return value;
}
