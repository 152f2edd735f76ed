import * as fc from 'fast-check';
import { FLIGHT_MODES, PACES } from '../../engine/table/index.ts';
import { LANDERS, SITES, STARTS, worldsFor } from '../../levels/index.ts';
import { choiceOf } from './planChoice.ts';

const ids = (named: readonly { readonly id: string }[]) => fc.constantFrom(...named.map(({ id }) => id));

/** Every choice that a page can make of what is flown, at random. */
export const flyableChoice = fc
  .constantFrom(...LANDERS)
  .chain((lander) =>
    fc.record({
      lander: fc.constant(lander.id),
      site: ids(SITES),
      world: ids(worldsFor(lander)),
      start: ids(STARTS),
      seed: fc.maxSafeNat(),
      mode: fc.constantFrom(...FLIGHT_MODES),
      pace: fc.constantFrom(...PACES),
    }),
  )
  .map(choiceOf);
