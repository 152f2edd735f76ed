import { CAUTION } from '../constants.ts';

/** The inks of the drafting table. */
export const INKS = {
  paper: '#f5efe2',
  card: '#fffdf7',
  ink: '#1e2a36',
  pencil: '#625b50',
  faint: '#bdb199',
  grid: '#e9e0cd',
  soil: '#e6dcc6',
  hatch: '#a8997c',
  blue: '#285a8e',
  amber: '#965300',
  red: '#a2231d',
} as const;
export type Ink = keyof typeof INKS;

/** A drawing of a stated size, in px of its own sheet. */
export interface Plot {
  readonly width: number;
  readonly height: number;
  /** What stands inside the `svg` element. */
  readonly markup: string;
  /** What it shows, in a sentence, for whoever does not see it. */
  readonly label: string;
}

const DASHES = { solid: undefined, dashed: '7 4', dotted: '1.5 3.5', chain: '12 3 2 3' } as const;
type Dash = keyof typeof DASHES;

export interface Stroke {
  readonly ink: Ink;
  readonly width?: number;
  readonly dash?: Dash;
}

/** A number as it stands in markup: to a hundredth of a px. */
function px(value: number): string {
  return String(Math.round(value * 100) / 100);
}

/** A figure beside an axis: as many decimals as its step needs. */
export function tickWords(value: number, step: number): string {
  let decimals = 0;
  for (let unit = step; Math.abs(unit - Math.round(unit)) > 1e-9 * unit && decimals < 6; unit *= 10) decimals++;
  return value.toFixed(decimals).replace(/^-0(\.0*)?$/, '0');
}

export function line(x1: number, y1: number, x2: number, y2: number, stroke: Stroke): string {
  return `<path d="M${px(x1)} ${px(y1)}L${px(x2)} ${px(y2)}" ${strokeWords(stroke)}/>`;
}

export type Point = readonly [x: number, y: number];

export function polyline(points: readonly Point[], stroke: Stroke, closed = false): string {
  if (points.length === 0) return '';
  const path = points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('');
  return `<path d="${path}${closed ? 'Z' : ''}" ${strokeWords(stroke)} stroke-linejoin="round"/>`;
}

/** A part of a drawing [px]. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export function corners({ left, right, top, bottom }: Box): readonly Point[] {
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}

/** `opacity`: of the fill over what lies below it. */
export function area(points: readonly Point[], fill: string, opacity = 1): string {
  if (points.length === 0) return '';
  const thin = opacity === 1 ? '' : ` fill-opacity="${px(opacity)}"`;
  return `<path d="${points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('')}Z" fill="${fill}"${thin}/>`;
}

export function circle(x: number, y: number, radius: number, stroke: Stroke, fill: Ink | 'none' = 'none'): string {
  return `<circle cx="${px(x)}" cy="${px(y)}" r="${px(radius)}" ${strokeWords(stroke, fill)}/>`;
}

interface Lettering {
  readonly size?: number;
  readonly ink?: Ink;
  readonly align?: 'left' | 'center' | 'right';
  readonly turn?: number;
  readonly bold?: boolean;
  /** Under the letters, so that lines do not run through them. */
  readonly halo?: Ink;
}

export function words(text: string, x: number, y: number, lettering: Lettering = {}): string {
  const { size = 13, ink = 'ink', align = 'left', turn, bold = false, halo } = lettering;
  const anchor = { left: 'start', center: 'middle', right: 'end' }[align];
  const turned = turn === undefined ? '' : ` transform="rotate(${px(turn)} ${px(x)} ${px(y)})"`;
  const under = halo === undefined ? '' : ` stroke="var(--${halo})" stroke-width="4" paint-order="stroke"`;
  const weight = bold ? ' font-weight="bold"' : '';
  return `<text x="${px(x)}" y="${px(y)}" font-size="${size}" text-anchor="${anchor}" fill="var(--${ink})"${weight}${under}${turned}>${escapeMarkup(text)}</text>`;
}

function strokeWords({ ink, width = 1, dash = 'solid' }: Stroke, fill: Ink | 'none' = 'none'): string {
  const pattern = DASHES[dash];
  const filled = fill === 'none' ? 'none' : `var(--${fill})`;
  return `fill="${filled}" stroke="var(--${ink})" stroke-width="${px(width)}"${pattern === undefined ? '' : ` stroke-dasharray="${pattern}"`}`;
}

/** The `svg` element that shows a plot in a page, as large as its place. */
export function inlineSvg({ width, height, markup, label }: Plot): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${px(width)} ${px(height)}" role="img" aria-label="${escapeMarkup(label)}">${markup}</svg>`;
}

/** A file of its own: with its inks, a ground of paper, what it shows and the caution. */
export function standaloneSvg(plot: Plot, under: readonly string[] = []): string {
  const lines = [...under, CAUTION];
  const height = plot.height + 16 + 15 * lines.length;
  const foot = lines.map((text, i) => words(text, 10, plot.height + 12 + 15 * i, { size: 10.5, ink: 'pencil' }));
  const body = [plot.markup, ...foot].join('');
  const inked = Object.entries(INKS).reduce((text, [ink, color]) => text.replaceAll(`var(--${ink})`, color), body);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${px(plot.width)}" height="${px(height)}" viewBox="0 0 ${px(plot.width)} ${px(height)}" font-family="Georgia, 'DejaVu Serif', serif"><title>${escapeMarkup(plot.label)}</title><rect width="100%" height="100%" fill="${INKS.card}"/>${inked}</svg>\n`;
}

/** Text as it may stand in markup, between tags or in quotes. */
export function escapeMarkup(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}
