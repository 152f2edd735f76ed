import { formatProblem } from '../../engine/result.ts';
import coombeLedge from './coombeLedge.json' with { type: 'json' };
import { parseSite } from './parseSite.ts';
import pinfoldPlain from './pinfoldPlain.json' with { type: 'json' };
import ravelBank from './ravelBank.json' with { type: 'json' };
import saddlersBench from './saddlersBench.json' with { type: 'json' };
import type { Site } from './site.ts';
import tallowHollow from './tallowHollow.json' with { type: 'json' };

/** The sites that come with the program, from the easiest. */
export const SITES: readonly Site[] = [saddlersBench, pinfoldPlain, coombeLedge, tallowHollow, ravelBank].map(readOwn);

export function findSite(id: string): Site | undefined {
  return SITES.find((site) => site.id === id);
}

/** Our own files go through the same parser as anyone's; a fault in one is a fault of the program. */
function readOwn(json: unknown): Site {
  const site = parseSite(json);
  if (!site.ok) throw new Error(`A site of ours is wrong: ${site.error.map(formatProblem).join('; ')}`);
  return site.value;
}
