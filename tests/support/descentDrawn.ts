import { DescentDrawing, type DescentSource } from '../../client/scenes/descentDrawing.ts';
import { figureOf } from '../../client/views/lander/figure.ts';
import { firstLanding } from '../../levels/index.ts';

const { setup } = firstLanding(1);

/** The drawing of the first landing, without movement of its own, with what a test wants otherwise. The figures are those of the view. */
export function drawingOf(source: Pick<DescentSource, 'view'> & Partial<DescentSource>): DescentDrawing {
  return new DescentDrawing({
    figures: source.view,
    terrain: () => setup.terrain,
    figure: figureOf(setup.lander),
    gravity: setup.gravity,
    maxThrust: setup.lander.engine.maxThrust,
    fullPropellant: setup.propellant,
    still: () => true,
    ...source,
  });
}
