import { CAUTION } from '../../engine/constants.ts';
import { escapeMarkup } from '../../engine/plot/index.ts';
import { answerPart } from './answerPart.ts';
import type { BoardFindings } from './boardFindings.ts';
import type { BoardQuestion } from './boardQuestion.ts';
import { BOARD_STYLE } from './boardStyle.ts';
import { landerPart } from './landerPart.ts';
import { directionPart, matrixPart, planePart, worldsPart } from './limitParts.ts';
import { createSheet, paragraph, type Sheet } from './sheet.ts';
import { sensitivityPart } from './sensitivityPart.ts';
import { campaignPart, driverPart, tradePart } from './spreadParts.ts';
import { assumptionPart, cardPart, originPart, rangePart } from './trustParts.ts';
import { worstPart } from './worstPart.ts';

/** One numbered section: its heading, and what stands below it. */
interface Part {
  readonly title: string;
  readonly write: (question: BoardQuestion, findings: BoardFindings, sheet: Sheet) => string;
}

const PARTS: readonly Part[] = [
  { title: 'In short', write: answerPart },
  { title: 'The lander', write: landerPart },
  { title: 'Limits by world and slope', write: matrixPart },
  { title: 'By direction', write: directionPart },
  { title: 'Which arrivals stay upright', write: planePart },
  { title: 'Stance that each world asks for', write: worldsPart },
  { title: 'If nothing is exact: many arrivals', write: campaignPart },
  { title: 'What costs the margin', write: driverPart },
  { title: 'What each input changes', write: sensitivityPart },
  { title: 'What buys margin', write: tradePart },
  { title: 'Worst cases, and how to see them again', write: worstPart },
  { title: 'What is assumed', write: assumptionPart },
  { title: 'Checked range, and what lies outside it', write: rangePart },
  { title: 'Credibility card', write: cardPart },
  { title: 'How this was made', write: originPart },
];

/** The report as one file of HTML: no script, nothing fetched; the same findings give the same bytes. */
export function boardPage(question: BoardQuestion, findings: BoardFindings): string {
  const sheet = createSheet();
  const title = `${question.name} ${question.place}: report for a board`;
  const parts = PARTS.filter(({ write }) => write !== tradePart || question.trade.length > 0);
  const sections = parts.map(({ title: heading, write }, i) => {
    const body = write(question, findings, sheet);
    return `<section id="s${i + 1}"><h2>${i + 1}. ${escapeMarkup(heading)}</h2>\n${body}</section>\n`;
  });
  const [first, ...rest] = sections;
  return [
    '<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escapeMarkup(title)}</title>`,
    `<style>${BOARD_STYLE}</style>\n</head>\n<body>\n<main>`,
    `<h1>${escapeMarkup(title)}</h1>`,
    paragraph(CAUTION, 'caution'),
    first,
    contents(parts),
    ...rest,
    `<footer>${paragraph(CAUTION, 'caution')}</footer>`,
    '</main>\n</body>\n</html>\n',
  ].join('\n');
}

function contents(parts: readonly Part[]): string {
  const lines = parts.map(({ title }, i) => `<li><a href="#s${i + 1}">${escapeMarkup(title)}</a></li>`);
  return `<nav aria-label="Sections"><ol>${lines.join('')}</ol></nav>`;
}
