import { CAUTION } from '../constants.ts';
import { hashFloats } from '../math/hash.ts';
import { PHYSICS_REVISION } from '../world/constants.ts';
import { CHECKED_RANGES, RANGED_MODELS, shortened, UNCHECKED_FEATURES } from './checkedRange.ts';
import { CREDIBILITY_FACTORS, PERMITTED_USE, SIMPLIFICATIONS, type CredibilityFactor } from './credibilityFactors.ts';
import { MODEL_UNCERTAINTIES, type ModelUncertainty } from './modelUncertainties.ts';
import { CHECK_KINDS, type CheckKind, type CheckResult } from './outsideCheck.ts';

/** What was checked, and how far to trust it. */
export interface CredibilityCard {
  /** Revision of the engine's physics and a hash of the check results: changes whenever one of them does. */
  readonly version: string;
  /** Day on which the results were last entered, ISO 8601. */
  readonly checkedOn: string;
  readonly permittedUse: string;
  readonly factors: readonly CredibilityFactor[];
  readonly simplifications: readonly string[];
  readonly uncertainties: readonly ModelUncertainty[];
  readonly ranges: typeof CHECKED_RANGES;
  readonly unchecked: typeof UNCHECKED_FEATURES;
  readonly checks: readonly CheckResult[];
}

/** Changed by hand whenever the version changes: the engine has no clock. */
const CHECKED_ON = '2026-11-25';

export function credibilityCard(checks: readonly CheckResult[]): CredibilityCard {
  return {
    version: versionOf(checks),
    checkedOn: CHECKED_ON,
    permittedUse: PERMITTED_USE,
    factors: CREDIBILITY_FACTORS,
    simplifications: SIMPLIFICATIONS,
    uncertainties: MODEL_UNCERTAINTIES,
    ranges: CHECKED_RANGES,
    unchecked: UNCHECKED_FEATURES,
    checks,
  };
}

/** The card as Markdown, which reads as plain text too. */
export function formatCard(card: CredibilityCard): string {
  return [
    '# Credibility card',
    '',
    'What was checked, and how far to trust it. Made by `npx kilter check --card --markdown` from the checks that the shipped engine ran.',
    '',
    CAUTION,
    '',
    `Version ${card.version} of ${card.checkedOn}. ${countsOf(card.checks)}`,
    '',
    '## Permitted use',
    '',
    card.permittedUse,
    '',
    '## What is simplified',
    '',
    ...card.simplifications.map((line) => `- ${line}`),
    '',
    '## Uncertainty of the models',
    '',
    'What measurements say of the models, and what is not known. None of it is in any interval that the engine prints.',
    '',
    ...table(
      ['model', 'how far it may be off', 'source'],
      card.uncertainties.map(({ model, words, source }) => [model, words, source]),
    ),
    '',
    '## Factors of credibility',
    '',
    'The factors are those of NASA-STD-7009; names and levels are from memory, and the levels are our own judgment.',
    '',
    'Level 0: no evidence. 1: reasoned, with little evidence. 2: evidence of our own for part. 3: evidence that anybody can run, for most. 4: evidence from outside for the very use. This wording is ours.',
    '',
    ...table(
      ['factor', 'level', 'why'],
      card.factors.map(({ factor, level, why }) => [factor, String(level), why]),
    ),
    '',
    '## Checked range',
    '',
    'Results beyond it say "outside checked range".',
    '',
    ...table(
      ['model', 'input', 'from', 'to', 'unit', 'compared with'],
      RANGED_MODELS.flatMap((model) =>
        card.ranges[model].map(({ words, least, most, unit, why }) => [
          model,
          words,
          shortened(least),
          shortened(most),
          unit,
          why,
        ]),
      ),
    ),
    '',
    ...uncheckedLines(card),
    '',
    '## Checks',
    '',
    'Kind: measured by somebody; printed, a figure as it stands in its source; form, a closed form named after its source and evaluated at inputs of our own, which verifies the code and does not validate the model; derived beside the check; or a trend, a direction or rule of thumb. "Source seen" is yes only where it was at hand or the derivation stands beside the code, abstract where no more than that was read; a publication with no is quoted from memory.',
    '',
    ...table(
      ['check', 'expected', 'error achieved', 'unit', 'kind', 'source seen', 'source', 'result'],
      card.checks.map(checkRow),
    ),
    '',
    'More comparisons, with other engines and by simulation, stand in the validation tests.',
  ].join('\n');
}

/** What no range covers, a line for each model that has such a thing. */
export function uncheckedLines({ unchecked }: CredibilityCard): readonly string[] {
  return RANGED_MODELS.flatMap((model) => {
    const words = new Set((unchecked[model] ?? []).map((feature) => feature.words));
    return words.size === 0 ? [] : [`Not checked from outside in the ${model}: ${[...words].join('; ')}.`];
  });
}

/** Relative error of a value; of a bound or a range, the value computed. */
export function achievedError({ relation, relativeError, computed }: CheckResult): string {
  return relation === 'equals' ? relativeError.toExponential(1) : `computed ${shortened(computed)}`;
}

function checkRow(check: CheckResult): readonly string[] {
  const sign = { equals: '', atMost: 'at most ', atLeast: 'at least ', within: '' }[check.relation];
  return [
    check.name,
    `${sign}${check.printed}`,
    achievedError(check),
    check.unit,
    check.kind,
    check.seen,
    check.source,
    check.pass ? 'pass' : 'FAIL',
  ];
}

function countsOf(checks: readonly CheckResult[]): string {
  const count = (kind: CheckKind) => checks.filter((check) => check.kind === kind).length;
  const kinds = CHECK_KINDS.map((kind) => `${count(kind)} ${kind}`).join(', ');
  const passed = checks.filter((check) => check.pass).length;
  return `${checks.length} checks (${kinds}), ${passed} passed, ${checks.length - passed} failed.`;
}

function versionOf(checks: readonly CheckResult[]): string {
  const hash = hashFloats(checks.flatMap(({ computed, pass }) => [computed, pass ? 1 : 0]));
  return `${PHYSICS_REVISION}-${hash}`;
}

function table(headings: readonly string[], rows: readonly (readonly string[])[]): readonly string[] {
  return [row(headings), row(headings.map(() => '---')), ...rows.map(row)];
}

function row(cells: readonly string[]): string {
  return `| ${cells.map((cell) => cell.replaceAll('|', '/')).join(' | ')} |`;
}
