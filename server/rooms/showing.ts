import type { Client } from '@colyseus/core';
import { StateView } from '@colyseus/schema';
import { viewCommon, viewOwn, viewTruth, type MemberId, type OwnView, type Table } from '../../engine/table/index.ts';
import { layPaper, writeCommon, writeOwn, type TablePapers } from '../schema/index.ts';
import { createOwnReadings } from './ownReadings.ts';

/** Writes on the papers of a room what its members are shown. */
export class Showing {
  readonly #papers: TablePapers;
  readonly #ownReadings = createOwnReadings();
  /** What each member was shown last. */
  readonly #shown = new Map<MemberId, OwnView>();

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
    writeOwn(paper, this.#look(table, memberId));
    client.view = new StateView();
    client.view.add(paper);
  }

  forget(memberId: MemberId): void {
    this.#shown.delete(memberId);
    this.#papers.papers.delete(memberId);
  }

  /** For a sending to the members given. `steps`: that the room has made. */
  write(table: Table, steps: number, to: Iterable<MemberId>): void {
    writeCommon(this.#papers, viewCommon(table));
    const areDue = this.#ownReadings.areDue(table.state, steps);
    for (const memberId of to) {
      const paper = this.#papers.papers.get(memberId);
      if (paper === undefined) continue;
      const before = this.#shown.get(memberId);
      writeOwn(paper, areDue || before === undefined ? this.#look(table, memberId) : viewTruth(table, before));
    }
  }

  #look(table: Table, memberId: MemberId): OwnView {
    const view = viewOwn(table, memberId);
    this.#shown.set(memberId, view);
    return view;
  }
}
