import {
  credibilityCard,
  formatCard,
  runChecks,
  type CheckRelation,
  type CheckResult,
} from '../../engine/checks/index.ts';
import { cardText } from './cardText.ts';
import type { DefineVerb } from './program.ts';
import type { Report } from './report.ts';
import { numberSources, textTable } from './textTable.ts';
import { UsageError } from './usageError.ts';

interface CheckOptions {
  readonly card?: boolean;
  readonly markdown?: boolean;
  readonly json?: boolean;
}

export const defineCheck: DefineVerb = (command, deliver) => {
  command
    .description(
      'Runs the outside checks in the shipped engine, each beside its source: measured values, figures printed in a source, ' +
        'forms named after one and evaluated at our own inputs, textbook physics, trends. Exit code 1 when any of them fails.',
    )
    .option(
      '--card',
      'print the credibility card: the checks, the factors of credibility, the checked range, the permitted use',
    )
    .option('--markdown', 'with --card: as Markdown, the form of engine/CREDIBILITY.md')
    .addHelpText(
      'after',
      '\nExamples:\n  kilter check\n  kilter check --json\n  kilter check --card\n  kilter check --card --markdown',
    )
    .action((options: CheckOptions) => {
      if (options.markdown === true && options.card !== true) throw new UsageError('--markdown goes with --card');
      if (options.markdown === true && options.json === true)
        throw new UsageError('expected --json or --markdown, got both');
      const checks = runChecks();
      deliver(options.card === true ? reportCard(checks, options.markdown === true) : reportChecks(checks));
    });
};

const SIGNS: Readonly<Record<CheckRelation, string>> = { equals: '', atMost: '<= ', atLeast: '>= ', within: '' };

/** The card as a table for people, or in Markdown, so that it can be kept beside the code. */
export function reportCard(checks: readonly CheckResult[], isMarkdown: boolean): Report {
  const card = credibilityCard(checks);
  const failed = checks.some((check) => !check.pass);
  return {
    verb: 'check',
    inputs: { card: true },
    results: { card },
    text: isMarkdown ? formatCard(card) : cardText(card),
    failed,
  };
}

/** One row a check and the count below; apart from running them, so that a failure can be shown as well. */
function reportChecks(checks: readonly CheckResult[]): Report {
  const failed = checks.filter((check) => !check.pass).length;
  const sources = numberSources(checks.map(citation));
  const table = textTable(
    [
      { heading: 'result', align: 'left' },
      { heading: 'check', align: 'left' },
      { heading: 'expected', align: 'right' },
      { heading: 'computed', align: 'right' },
      { heading: 'unit', align: 'left' },
      { heading: 'error [-]', align: 'right' },
      { heading: 'allowed [-]', align: 'right' },
      { heading: 'kind', align: 'left' },
      { heading: 'source', align: 'right' },
    ],
    checks.map((check) => [
      check.pass ? 'pass' : 'FAIL',
      check.name,
      `${SIGNS[check.relation]}${check.printed}`,
      closer(check.computed, check.printed),
      check.unit,
      check.relativeError.toExponential(1),
      check.relation === 'equals' ? check.tolerance.toExponential(1) : 'bound',
      check.kind,
      sources.numberOf(citation(check)),
    ]),
  );
  const count = `${checks.length} checks, ${checks.length - failed} passed, ${failed} failed`;
  return {
    verb: 'check',
    inputs: {},
    results: { passed: checks.length - failed, failed, checks },
    text: `${table}\n\n${sources.list}\n\n${count}`,
    failed: failed > 0,
  };
}

/** A publication that was not at hand says so. */
function citation({ source, kind, seen }: CheckResult): string {
  // a trend has a publication behind it, with its key in brackets, or common practice
  const quoted = kind !== 'derived' && (kind !== 'trend' || source.includes('['));
  if (seen === 'abstract') return `${source} (abstract seen)`;
  return quoted && seen === 'no' ? `${source} (from memory)` : source;
}

/** Two places more than the source prints, so that the error shows. */
function closer(computed: number, printed: string): string {
  if (Number.isInteger(computed)) return String(computed);
  const lower = printed.split(' to ')[0] ?? printed;
  return computed.toFixed((lower.split('.')[1]?.length ?? 0) + 2);
}
