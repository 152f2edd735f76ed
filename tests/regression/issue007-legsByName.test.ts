/**
 * What the legs weigh was found by the name of a part: renamed, the part stayed on the lander when it was laid on its side, and the verdict flipped. A
 * part now says that it is gear.
 */
import { describe, expect, it } from 'vitest';
import { compareUprightLying } from '../../engine/structure/index.ts';
import { shippedLander } from '../support/touchDown.ts';

describe('upright against lying', () => {
  it('does not change with the names of the parts', () => {
    const lander = shippedLander('steeple');
    const renamed = { ...lander, parts: lander.parts.map((part, i) => ({ ...part, name: `piece ${i}` })) };
    const options = { gravity: 1.62422 };
    expect(compareUprightLying(renamed, options)).toEqual(compareUprightLying(lander, options));
    expect(lander.parts.filter(({ kind }) => kind === 'gear')).toHaveLength(1);
  });
});
