import { describe, expect, it } from 'vitest';
import { touchdownOf } from '../../../client/hall/facts.ts';
import { STUDIES } from '../../../client/workbench/studies.ts';
import { HALL, type FilmScene } from '../../../levels/index.ts';
import { callJson } from '../cli/runKilter.ts';

const films = HALL.scenes.filter((scene): scene is FilmScene => scene.kind === 'film');

/** What the thread of the page says of each arrival. */
function outcomes({ arrivals }: FilmScene): readonly string[] {
  const seen = [...STUDIES.films(arrivals.map(touchdownOf))].at(-1);
  if (seen === undefined || typeof seen === 'string') throw new Error(seen);
  return seen.map((film) => (typeof film === 'string' ? film : film.result.outcome));
}

describe('the scenes of the hall', () => {
  it.each(films)('$question ends as its answer says: one of them falls', (scene) => {
    const falls = outcomes(scene).map((outcome) => outcome.startsWith('tipped'));
    expect(falls.filter(Boolean)).toHaveLength(1);
    // the answers are written for these: Moon, feet closer, a leg gone, upright
    expect(scene.arrivals[falls.indexOf(true)]?.name).toMatch(/^(Moon|B: feet closer|B: a leg gone|A: upright)$/);
  });

  it('end as the command line says for the same arrival', async () => {
    const [scene] = films;
    if (scene === undefined) throw new Error('no film');
    for (const [i, arrival] of scene.arrivals.entries()) {
      const { lander, world, slopeDeg, descentRate, horizontalSpeed, friction } = arrival;
      const words = `touchdown ${lander.id} --world ${world} --slope ${slopeDeg} --descent ${descentRate} --horizontal ${horizontalSpeed} --friction ${friction}`;
      const said = await callJson(words.split(' '));
      expect(said).toMatchObject({ outcome: outcomes(scene)[i] });
    }
  });
});
