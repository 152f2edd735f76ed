import { figure } from '../../engine/figures.ts';
import { requirementText } from '../cli/requirementText.ts';
import { whatBuysLines } from '../../engine/study/index.ts';
import type { BoardCell, BoardFindings } from './boardFindings.ts';
import type { BoardQuestion } from './boardQuestion.ts';
import { list, paragraph } from './sheet.ts';
import { angleWords, gearWords, limitWords, standingWords } from './words.ts';

/** What a board reads first. */
export function answerPart(question: BoardQuestion, findings: BoardFindings): string {
  const [first = '', arrival = '', ...facts] = answerLines(question, findings);
  return [
    '<div class="answer">',
    paragraph(first, 'first'),
    paragraph(arrival),
    '</div>',
    list(facts),
    paragraph(
      'Tip limit: the greatest horizontal speed at touchdown at which the lander still stays up, simulated in six degrees of freedom ' +
        'with crushing legs; the least over travel square to every edge and along every foot, the ground falling the way it travels, ' +
        'at the friction stated and at the highest plausible one.',
      'note',
    ),
  ].join('\n');
}

/** The same as lines: the limit against the arrival, the arrival, then what else matters most. */
export function answerLines({ asked, place, campaign }: BoardQuestion, findings: BoardFindings): readonly string[] {
  const { least, rigid, summary, trades, outside } = findings;
  const speed = Math.abs(asked.horizontalSpeed);
  const { slopeDeg, descentRate, friction } = asked;
  const { legs, tiltDeg } = rigid.least;
  return [
    [standingWords(least, speed), gearWords(least)].filter((words) => words !== '').join(' '),
    `The arrival: ${place}, slope ${slopeDeg} deg, ${descentRate} m/s down, ${asked.horizontalSpeed} m/s sideways (+ downhill), friction ${friction} [-].`,
    worstWords(findings.cells, speed),
    `Standing still it falls at ${angleWords(tiltDeg)} of tilt, over the edge between legs ${legs.join(' and ')}; the slope leaves ${angleWords(tiltDeg - slopeDeg)}.`,
    ...(summary.requirement === undefined
      ? ['No requirement was stated: no verdict.']
      : [`${oneLine(requirementText(summary.requirement))} ${campaign.runs} arrivals drawn, seed ${campaign.seed}.`]),
    ...(trades.length === 0 ? [] : whatBuysLines(trades)),
    rangeWords([...outside.arrival, ...outside.campaign.map((line) => `arrivals drawn: ${line}`)]),
  ];
}

/** The worst of the cases looked at, and how many of them the arrival is beyond. */
function worstWords(cells: readonly BoardCell[], speed: number): string {
  const worst = worstCell(cells);
  if (worst === undefined) return 'No case of world and slope was looked at.';
  const beyond = cells.filter(({ least: { tip } }) => tip !== null && tip < speed).length;
  const where = `${worst.world.name}, slope ${worst.slopeDeg} deg`;
  const used = cells.filter(({ least: { gear } }) => gear !== null && gear <= speed).length;
  return [
    cells.length === 1
      ? `On ${where}: ${limitWords(worst.least)}.`
      : `Least of the ${cells.length} cases of world and slope: ${limitWords(worst.least)} (${where}).`,
    `At ${figure(speed, 2)} m/s it tips in ${beyond === 0 ? 'none' : beyond} of ${cells.length}${used === 0 ? '' : `, and a leg may be used up in ${used}`}.`,
  ].join(' ');
}

/** The case with the least tip limit; one that tips at no speed looked at comes last. */
export function worstCell(cells: readonly BoardCell[]): BoardCell | undefined {
  return cells.toSorted((a, b) => (a.least.tip ?? Infinity) - (b.least.tip ?? Infinity))[0];
}

/** Lines that are named at once. */
const MOST_NAMED = 2;

function rangeWords(outside: readonly string[]): string {
  if (outside.length === 0) return 'Every input lies inside the range in which the models were checked.';
  const more = outside.length - MOST_NAMED;
  return `Outside the range in which the models were checked: ${outside.slice(0, MOST_NAMED).join('; ')}${more > 0 ? `; and ${more} more, in "Checked range"` : ''}.`;
}

function oneLine(text: string): string {
  return text.replaceAll('\n', ' ');
}
