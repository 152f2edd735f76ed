/**
 * What a drawing is made with. Drawings are written once against this interface; a canvas and an SVG document carry it out.
 *
 * Coordinates are pixels of the sheet, x right, y down, angles in radians clockwise from +x (as both carriers have it).
 * Widths and sizes are in drafting units: one unit is one pixel on a small sheet and more on a large one.
 */
export interface Pen {
  /** Pixels in a drafting unit. */
  readonly unit: number;
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  /** Quadratic curve with one control point. */
  curveTo(controlX: number, controlY: number, x: number, y: number): void;
  /** Joins the path to the arc's start with a straight line, unless the path is empty. */
  arc(centerX: number, centerY: number, radius: number, from: number, to: number, backward?: boolean): void;
  close(): void;
  /** Fills, strokes, or both, and lifts the pen: the next call starts a new path. */
  paint(mark: Mark): void;
  /** Draws with all lines thinner by this share: for what is seen from afar. */
  lighter(share: number, draw: () => void): void;
  /** Draws inside the current path only. */
  within(draw: () => void): void;
  text(words: string, x: number, y: number, lettering: Lettering): void;
  /** Width of the words in pixels; an estimate where the carrier has no fonts. */
  widthOf(words: string, lettering: Lettering): number;
}

/** Names of the inks and papers; the one list of their colors is `styles/palette.css`. */
export const TONES = [
  'paper',
  'card',
  'ink',
  'pencil',
  'faint',
  'grid',
  'soil',
  'hatch',
  'blue',
  'wash',
  'shade',
  'glass',
] as const;
export type Tone = (typeof TONES)[number];

/** Line widths [drafting units], each about 1.4 times the next, as technical drawing has them. */
export const WIDTHS = { heavy: 4, thick: 2.8, outline: 2, edge: 1.4, thin: 1, hair: 0.7 } as const;
export type Width = keyof typeof WIDTHS;

/** Dash patterns [drafting units]: `chain` for axes, `dashed` for what was or would be, `dotted` for projections. */
export const DASHES = {
  solid: [],
  dashed: [7, 5],
  fine: [4, 3],
  dotted: [1.5, 4],
  chain: [16, 4, 3, 4],
} as const;
type Dash = keyof typeof DASHES;

export interface Mark {
  readonly fill?: Tone;
  readonly stroke?: Tone;
  /** Default 'thin'. */
  readonly width?: Width;
  /** Default 'solid'. */
  readonly dash?: Dash;
  /** 0 to 1, default 1. */
  readonly alpha?: number;
}

export interface Lettering {
  /** [drafting units] */
  readonly size: number;
  /** Default 'ink'. */
  readonly tone?: Tone;
  /** Default 'left'. */
  readonly align?: 'left' | 'center' | 'right';
  readonly italic?: boolean;
  readonly bold?: boolean;
  /** A margin of this paper behind the letters, so that no line runs through them. */
  readonly halo?: Tone;
  /** Radians clockwise about the anchor, default 0. */
  readonly turn?: number;
}
