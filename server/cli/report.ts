import type { RangedModel } from '../../engine/checks/index.ts';
import { CAUTION } from '../../engine/constants.ts';
import { formatCsv, type CsvTable } from './csv.ts';

/** What a verb found: plain data for machines, a table for people. */
export interface Report {
  readonly verb: string;
  /** What was asked, in the units of the options, with every default filled in. */
  readonly inputs: Readonly<Record<string, unknown>>;
  /** The named results of the verb. */
  readonly results: Readonly<Record<string, unknown>>;
  /** What the checked range looks at beside the inputs, such as the shape of the body. */
  readonly ranged?: Readonly<Record<string, unknown>>;
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

/** The models behind each verb whose inputs have a checked range. */
const MODELS: Readonly<Record<string, readonly RangedModel[]>> = {
  limit: ['trip limit'],
  stance: ['trip limit'],
  touchdown: ['touchdown simulation'],
  envelope: ['touchdown simulation'],
  disperse: ['touchdown simulation', 'dispersion'],
  compare: ['trip limit', 'structure'],
};

export async function formatReport(report: Report, format: ReportFormat): Promise<string> {
  const models = MODELS[report.verb] ?? [];
  const ranged = { ...report.inputs, ...report.ranged };
  const outside = models.length === 0 ? [] : await outsideOf(models, ranged);
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
    ...(models.length === 0 ? {} : { outsideCheckedRange: outside }),
  };
  return `${JSON.stringify(document, refuseNonFinite, 2)}\n`;
}

/** Brings in the checks only for a verb that has a checked range. */
async function outsideOf(models: readonly RangedModel[], ranged: object): Promise<readonly string[]> {
  const { outsideCheckedRange } = await import('../../engine/checks/index.ts');
  return models.flatMap((model) => outsideCheckedRange(model, { ...ranged }));
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
