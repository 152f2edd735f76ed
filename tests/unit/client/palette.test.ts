import { describe, expect, it } from 'vitest';
import { TONES } from '../../../client/ink/pen.ts';
import { readSource } from '../../support/sources.ts';

const colors = new Map(
  [...readSource('client/styles/palette.css').matchAll(/--(\w+): (#[0-9a-f]{6});/g)].map(([, name = '', hex = '']) => [
    name,
    hex,
  ]),
);

/**
 * Relative luminance of a color, 0 to 1.
 *
 *   L = 0.2126 R + 0.7152 G + 0.0722 B                 WCAG 2.2, definition of relative luminance (from memory)
 */
function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [low = 0, high = 0] = [one, other].map((name) => luminance(colors.get(name) ?? '')).toSorted((a, b) => a - b);
  return (high + 0.05) / (low + 0.05);
}

describe('the inks and papers', () => {
  it('have a color for every tone that pens know', () => {
    expect(TONES.filter((tone) => !colors.has(tone))).toEqual([]);
  });

  it('give black on white 21:1, so that the measure itself can be trusted', () => {
    colors.set('black', '#000000').set('white', '#ffffff');
    expect(contrast('black', 'white')).toBeCloseTo(21, 6);
  });

  it.each(['ink', 'pencil', 'blue'])('let words in %s be read on paper, card and soil (4.5:1)', (tone) => {
    for (const ground of ['paper', 'card', 'soil', 'shade', 'wash']) {
      expect(contrast(tone, ground)).toBeGreaterThanOrEqual(4.5);
    }
  });

  it('keep amber and red out of everything but alerts', () => {
    const sheets = ['base', 'start', 'desk'].map((name) => readSource(`client/styles/${name}.css`)).join('\n');
    expect(sheets.length).toBeGreaterThan(1000);
    expect(sheets).not.toMatch(/--(amber|red)|#[0-9a-f]{3,6}\b|\b(red|orange|green|yellow)\b/i);
    expect(TONES.filter((tone) => /amber|red/.test(tone))).toEqual([]);
  });
});
