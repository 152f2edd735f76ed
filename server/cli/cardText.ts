import {
  achievedError,
  RANGED_MODELS,
  uncheckedLines,
  type CheckResult,
  type CredibilityCard,
} from '../../engine/checks/index.ts';
import { textTable } from './textTable.ts';

/** The card for people at a terminal: the same content as the Markdown, the checks in short. */
export function cardText(card: CredibilityCard): string {
  const failed = card.checks.filter(({ pass }) => !pass).length;
  return [
    `Credibility card, version ${card.version} of ${card.checkedOn}`,
    '',
    `Permitted use: ${card.permittedUse}`,
    '',
    'What is simplified',
    ...card.simplifications.map((line) => `- ${line}`),
    '',
    'Uncertainty of the models (in no interval)',
    ...card.uncertainties.map(({ model, words, source }) => `- ${model}: ${words}. ${source}`),
    '',
    'Factors of NASA-STD-7009 (names and levels 0 to 4 from memory; the levels are our own judgment)',
    ...card.factors.map(({ factor, level, why }) => `- ${factor}, level ${level}: ${why}`),
    '',
    'Checked range',
    rangeTable(card),
    '',
    ...uncheckedLines(card),
    '',
    'Checks',
    checkTable(card.checks),
    '',
    `${card.checks.length} checks, ${card.checks.length - failed} passed, ${failed} failed; kilter check lists their sources.`,
  ].join('\n');
}

/** Model, input, from, to, unit, what was compared: a row for each range. */
export function rangeRows({ ranges }: CredibilityCard): readonly (readonly string[])[] {
  return RANGED_MODELS.flatMap((model) =>
    ranges[model].map(({ words, least, most, unit, why }) => [
      model,
      words,
      String(Number(least.toPrecision(4))),
      String(Number(most.toPrecision(4))),
      unit,
      why,
    ]),
  );
}

function rangeTable(card: CredibilityCard): string {
  return textTable(
    [
      { heading: 'model', align: 'left' },
      { heading: 'input', align: 'left' },
      { heading: 'from', align: 'right' },
      { heading: 'to', align: 'right' },
      { heading: 'unit', align: 'left' },
      { heading: 'compared with', align: 'left' },
    ],
    rangeRows(card),
  );
}

function checkTable(checks: readonly CheckResult[]): string {
  return textTable(
    [
      { heading: 'result', align: 'left' },
      { heading: 'check', align: 'left' },
      { heading: 'error [-]', align: 'right' },
      { heading: 'kind', align: 'left' },
      { heading: 'source seen', align: 'left' },
    ],
    checks.map((check) => [check.pass ? 'pass' : 'FAIL', check.name, achievedError(check), check.kind, check.seen]),
  );
}
