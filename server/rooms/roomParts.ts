import type { TablePapers } from '../schema/index.ts';
import type { UnfinishedTable } from '../storage/index.ts';
import { createAllowances } from './allowances.ts';
import { Crew } from './crew.ts';
import type { Entering } from './entrance.ts';
import { createPlaces, type Places } from './places.ts';
import { RecordedTable } from './recordedTable.ts';
import { Requests } from './requests.ts';
import type { RoomClock } from './roomClock.ts';
import type { RoomServices } from './roomServices.ts';
import { Showing } from './showing.ts';

/** What a room is made of, besides what the room library wants of it. */
export interface RoomParts {
  readonly recorded: RecordedTable;
  readonly places: Places;
  readonly crew: Crew;
  readonly requests: Requests;
  readonly showing: Showing;
}

/** Puts them together, for a new table or one that is taken up; throws where it cannot be. */
export function openRoomParts(
  room: {
    readonly services: RoomServices;
    readonly papers: TablePapers;
    readonly clock: RoomClock;
    readonly opener: string | undefined;
    /** Of the table; another in the end, where that one is not free. */
    readonly code: () => string;
  },
  from: { readonly join: Entering['join'] | undefined; readonly takenUp: UnfinishedTable | undefined },
): RoomParts {
  const { services, clock } = room;
  const showing = new Showing(room.papers);
  const record = { services, code: room.code, onEntry: () => showing.note() };
  const { takenUp } = from;
  const recorded =
    takenUp === undefined
      ? RecordedTable.open(record, services.plan(from.join?.choice))
      : RecordedTable.takeUp(record, takenUp);
  const places = createPlaces(() => recorded.journal, room.opener, takenUp?.places);
  const allowances = createAllowances();
  const crew = new Crew({
    kept: () => recorded.kept,
    steps: () => clock.steps,
    seatKeptSeconds: services.seatKeptSeconds,
    onGone(memberId) {
      allowances.forget(memberId);
      places.forget(memberId);
      showing.forget(memberId);
    },
  });
  const onAsked = () => clock.noteAsked();
  const requests = new Requests({ recorded, crew, places, allowances, plan: services.plan, onAsked });
  if (takenUp !== undefined) crew.loseAll();
  return { recorded, places, crew, requests, showing };
}
