import { groundRange, type Source } from '../../engine/sensors/index.ts';
import type { MapView, TableView } from '../../engine/table/index.ts';
import { sourceValue } from './sourceWords.ts';

type Ground = Pick<MapView, 'firstX' | 'spacing' | 'heights'>;

/** No ground farther along the axis is looked for [m]. */
const FAR = 500;

/** What a source should read now if what is believed is true, in its own words; nothing for one that is not weighed. */
export function expectedValue(source: Source, { flight }: Pick<TableView, 'flight'>, ground: Ground): string {
  const values = expectedOf(source, flight, ground);
  return values.length === 0 ? '' : sourceValue({ source, values });
}

/** In the order of its channels, as engine/sensors measures them; for the screen alone, so the platform's own sine does. */
function expectedOf(source: Source, flight: TableView['flight'], ground: Ground): readonly number[] {
  const { vx, vy, angle } = flight;
  switch (source) {
    case 'altimeter': {
      const range = groundRange(ground, flight, FAR);
      return range === undefined ? [] : [range];
    }
    case 'velocityRadar':
      return [vx * Math.cos(angle) + vy * Math.sin(angle), vy * Math.cos(angle) - vx * Math.sin(angle)];
    case 'surfaceCamera':
      return [vx];
    case 'attitudeReference':
      return [angle];
    case 'inertialUnit':
    case 'propellantGauge':
    case 'contactProbes':
    case 'legIndications':
      return [];
  }
  return source satisfies never;
}
