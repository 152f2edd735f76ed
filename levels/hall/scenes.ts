import { formatProblem } from '../../engine/result.ts';
import type { Hall } from './hall.ts';
import { parseHall } from './parseHall.ts';
import scenes from './scenes.json' with { type: 'json' };

/** The scenes that come with Kilter. */
export const HALL: Hall = load();

/** The same as the text of a file: what a presenter begins from. */
export const HALL_TEXT: string = `${JSON.stringify(scenes, undefined, 2)}\n`;

function load(): Hall {
  const parsed = parseHall(scenes);
  if (!parsed.ok) throw new Error(`hall/scenes.json: ${parsed.error.map(formatProblem).join('; ')}`);
  return parsed.value;
}
