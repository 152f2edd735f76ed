import type { Client } from '@colyseus/core';
import { StateView } from '@colyseus/schema';
import { viewCommon, viewOwn, type MemberId, type Table } from '../../engine/table/index.ts';
import { layPaper, writeCommon, writeOwn, type TablePapers } from '../schema/index.ts';
import { createOwnReadings } from './ownReadings.ts';

/** Writes on the papers of a room what its members are shown. */
export class Showing {
  readonly #papers: TablePapers;
  readonly #ownReadings = createOwnReadings();

  constructor(papers: TablePapers) {
    this.#papers = papers;
  }

  /** Something was asked of the table: all is written anew with the next sending. */
  note(): void {
    this.#ownReadings.note();
  }

  /** Lays a member's paper on the table, and lets one client see it. */
  lay(client: Client, table: Table, memberId: MemberId): void {
    const paper = layPaper(this.#papers, memberId);
    writeCommon(this.#papers, viewCommon(table));
    writeOwn(paper, viewOwn(table, memberId));
    client.view = new StateView();
    client.view.add(paper);
  }

  forget(memberId: MemberId): void {
    this.#papers.papers.delete(memberId);
  }

  /** For a sending to the members given. `steps`: that the room has made. */
  write(table: Table, steps: number, to: Iterable<MemberId>): void {
    writeCommon(this.#papers, viewCommon(table));
    const isDue = this.#ownReadings.due(table.state, steps);
    for (const memberId of to) {
      const member = table.state.members.find(({ id }) => id === memberId);
      const paper = this.#papers.papers.get(memberId);
      if (paper !== undefined && member !== undefined && isDue(member)) writeOwn(paper, viewOwn(table, memberId));
    }
  }
}
