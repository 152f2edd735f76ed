import { figure } from '../../engine/figures.ts';
import type { LeastTipFields } from '../../engine/study/index.ts';
import { worstCell } from './answerPart.ts';
import type { BoardFindings } from './boardFindings.ts';
import type { BoardQuestion } from './boardQuestion.ts';
import { commandLine, paragraph } from './sheet.ts';
import { limitWords } from './words.ts';

/** Worst draws that are listed. */
const DRAWS_LISTED = 5;

/** Each worst case, with the command that shows it again. */
export function worstPart(question: BoardQuestion, findings: BoardFindings): string {
  const { asked, placeOption, slopesDeg, worlds } = question;
  const { least, cells, summary } = findings;
  const worst = worstCell(cells);
  const isLooked = slopesDeg.length * worlds.length > 0;
  return [
    '<h3>The arrival asked about, at its limit</h3>',
    ...limitCase(question, placeOption, asked.slopeDeg, least),
    ...(worst === undefined || !isLooked
      ? []
      : [
          '<h3>The worst world and slope</h3>',
          paragraph(`${worst.world.name}, slope ${worst.slopeDeg} deg: ${limitWords(worst.least)}.`),
          ...limitCase(question, `--world ${worst.world.id}`, worst.slopeDeg, worst.least),
        ]),
    '<h3>The worst arrivals drawn</h3>',
    paragraph(
      `Failures first, then by least margin; ${Math.min(DRAWS_LISTED, summary.worst.length)} of ${summary.done}. A margin of one that tipped is up to the verdict.`,
    ),
    ...summary.worst
      .slice(0, DRAWS_LISTED)
      .flatMap(({ index, outcome, leastMargin }) => [
        paragraph(`Case ${index}: ${outcome}, least margin ${figure(leastMargin, 3)} m.`),
        commandLine(`npx kilter disperse ${question.campaignWords} --case ${index}`),
      ]),
  ].join('\n');
}

/** The search again, and one touchdown just above the limit that it found. */
function limitCase(
  { asked, word }: BoardQuestion,
  place: string,
  slopeDeg: number,
  { tip, tipTolerance, tipFriction, tipAzimuthDeg }: LeastTipFields,
): readonly string[] {
  const { descentRate, friction, missing } = asked;
  const legs = missing.length === 0 ? '' : `--missing ${missing.map((leg) => leg + 1).join(',')}`;
  const command = (...words: readonly string[]): string =>
    commandLine(['npx kilter', ...words, legs].filter((part) => part !== '').join(' '));
  const arrival = [place, `--slope ${slopeDeg}`, `--descent ${descentRate}`] as const;
  const search = [paragraph('The search for the limit:'), command('limit', word, ...arrival, `--friction ${friction}`)];
  if (tip === null || tipAzimuthDeg === null) return search;
  const above = tip + tipTolerance;
  // the lander travels along azimuth 0 there, and is turned instead
  const yawDeg = tipAzimuthDeg > 180 ? 360 - tipAzimuthDeg : 0 - tipAzimuthDeg;
  const turned = yawDeg === 0 ? '' : `--yaw ${yawDeg}`;
  return [
    ...search,
    paragraph(`One touchdown just above it, ${figure(above, 4)} m/s at friction ${tipFriction} [-], which tips:`),
    command('touchdown', word, ...arrival, `--friction ${tipFriction}`, `--horizontal ${above}`, turned),
  ];
}
