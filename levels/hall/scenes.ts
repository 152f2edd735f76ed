import { formatProblem } from '../../engine/result.ts';
import type { Hall } from './hall.ts';
import { parseHall } from './parseHall.ts';
import scenes from './scenes.json' with { type: 'json' };

/** The scenes that come with Kilter. */
export const HALL: Hall = load();

function load(): Hall {
  const parsed = parseHall(scenes);
  if (!parsed.ok) throw new Error(`hall/scenes.json: ${parsed.error.map(formatProblem).join('; ')}`);
  return parsed.value;
}
