import type { Table } from '../table/table.ts';
import type { StandInMemory } from './talk.ts';

export function memoryOf({ state }: Table): StandInMemory {
  return state.talk.standIns;
}

export function remember({ state }: Table, what: Partial<StandInMemory>): void {
  state.talk = { ...state.talk, standIns: { ...state.talk.standIns, ...what } };
}
