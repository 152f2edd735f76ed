import type { DescentState } from '../world/descent.ts';
import { throttled } from './engineSettings.ts';
import { believedState } from './instruments.ts';
import type { Run } from './table.ts';
import type { TableState } from './tableState.ts';

/** The descent as the crew knows it: believed where it flies by instruments, else true. */
export function flightKnown(
  { instruments, believed, flight }: Run,
  { commanded, engine }: Pick<TableState, 'commanded' | 'engine'>,
): DescentState {
  if (instruments === undefined || believed === undefined) return flight;
  return believedState(instruments, believed, throttled(commanded, engine));
}
