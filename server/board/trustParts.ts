import { achievedError, uncheckedLines } from '../../engine/checks/index.ts';
import { PHYSICS_REVISION } from '../../engine/world/index.ts';
import { rangeRows } from '../cli/cardText.ts';
import type { BoardFindings } from './boardFindings.ts';
import type { BoardQuestion } from './boardQuestion.ts';
import { commandLine, list, paragraph, type Sheet } from './sheet.ts';

/** What the numbers take for granted. */
export function assumptionPart({ asked }: BoardQuestion, { card }: BoardFindings): string {
  return list([
    `The lander arrives upright, without turning, at ${asked.descentRate} m/s down, its engine off at contact, on a plane; what differs from that is drawn in "If nothing is exact" alone.`,
    'The ground falls the way it travels: the worst way for tipping.',
    'The lander is what its file says; nothing in the file was measured by us.',
    ...card.simplifications,
  ]);
}

/** What of this report lies outside the range in which the models were compared with something. */
export function rangePart(_: BoardQuestion, { outside, cells, card }: BoardFindings, sheet: Sheet): string {
  const cellLines = cells.flatMap(({ world, slopeDeg, outside: lines }) =>
    lines.map((line) => `${world.name}, slope ${slopeDeg} deg: ${line}`),
  );
  const found = [
    ...outside.arrival.map((line) => `The arrival: ${line}`),
    ...cellLines,
    ...outside.campaign.map((line) => `The arrivals drawn: ${line}`),
  ];
  return [
    found.length === 0
      ? paragraph('No input of this report lies outside the ranges below.')
      : paragraph('Outside checked range:') + list(found),
    sheet.table({
      caption: 'Between which values each model was compared with something outside it.',
      small: true,
      columns: [
        { heading: 'model' },
        { heading: 'input' },
        { heading: 'from', align: 'right' },
        { heading: 'to', align: 'right' },
        { heading: 'unit' },
        { heading: 'compared with' },
      ],
      rows: rangeRows(card),
    }),
    ...uncheckedLines(card).map((line) => paragraph(line)),
  ].join('\n');
}

/** The credibility card of the engine that made this. */
export function cardPart(_: BoardQuestion, { card }: BoardFindings, sheet: Sheet): string {
  const failed = card.checks.filter(({ pass }) => !pass).length;
  return [
    paragraph(`Version ${card.version}. Permitted use: ${card.permittedUse}`),
    sheet.table({
      caption: 'Factors of NASA-STD-7009; names and levels, 0 to 4, from memory; the levels are our own judgment.',
      columns: [{ heading: 'factor' }, { heading: 'level', align: 'right' }, { heading: 'why' }],
      rows: card.factors.map(({ factor, level, why }) => [factor, String(level), why]),
    }),
    sheet.table({
      caption: 'How far the models may be off. None of it is in any interval of this report.',
      columns: [{ heading: 'model' }, { heading: 'how far' }, { heading: 'source' }],
      rows: card.uncertainties.map(({ model, words, source }) => [model, words, source]),
    }),
    sheet.table({
      caption: `The checks, run when this report was made: ${card.checks.length}, of which ${failed} failed. npx kilter check lists their sources.`,
      small: true,
      columns: [
        { heading: 'check' },
        { heading: 'result' },
        { heading: 'error [-]', align: 'right' },
        { heading: 'kind' },
        { heading: 'source seen' },
      ],
      rows: card.checks.map((check) => [
        check.name,
        check.pass ? 'pass' : 'FAIL',
        achievedError(check),
        check.kind,
        check.seen,
      ]),
    }),
  ].join('\n');
}

/** Program, inputs and command: what makes the same bytes again. */
export function originPart({ version, inputs, command }: BoardQuestion, _: BoardFindings, sheet: Sheet): string {
  return [
    paragraph(
      `Kilter ${version}, physics revision ${PHYSICS_REVISION}. The same inputs and the same version give the same bytes.`,
    ),
    sheet.table({
      caption: 'Every input, with the SHA-256 of its bytes.',
      columns: [{ heading: 'input' }, { heading: 'bytes', align: 'right' }, { heading: 'SHA-256' }],
      rows: inputs.map(({ name, bytes, sha256 }) => [name, String(bytes), sha256]),
    }),
    paragraph('The command that makes this report:'),
    commandLine(`${command} --out FILE.html`),
  ].join('\n');
}
