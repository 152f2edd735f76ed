import type { Drill } from '../../engine/drill/index.ts';
import { formatProblem } from '../../engine/result.ts';
import coombeLedge from './coombeLedge.json' with { type: 'json' };
import falseFootfall from './falseFootfall.json' with { type: 'json' };
import { parseDrill } from './parseDrill.ts';
import quietAltimeter from './quietAltimeter.json' with { type: 'json' };
import saddlersBench from './saddlersBench.json' with { type: 'json' };
import slowSideways from './slowSideways.json' with { type: 'json' };

/** The drills that come with the program, from the easiest. */
export const DRILLS: readonly Drill[] = [saddlersBench, quietAltimeter, slowSideways, coombeLedge, falseFootfall].map(
  readOwn,
);

export function findDrill(id: string): Drill | undefined {
  return DRILLS.find((drill) => drill.id === id);
}

/** Our own files go through the same parser as anyone's; a fault in one is a fault of the program. */
function readOwn(json: unknown): Drill {
  const drill = parseDrill(json);
  if (!drill.ok) throw new Error(`A drill of ours is wrong: ${drill.error.map(formatProblem).join('; ')}`);
  return drill.value;
}
