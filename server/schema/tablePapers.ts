import { schema, t, type SchemaType } from '@colyseus/schema';
import type { TableView } from '../../engine/table/index.ts';
import { createPaperKind, type Paper } from './paperKind.ts';
import { tableShape } from './tableShape.ts';

const memberPaper = createPaperKind(tableShape, 'MemberPaper');

/** The paper in front of one member: `TableView` as it travels. One paper a member, visible to that member's client alone. */
export type MemberPaper = Paper;

/** What a room holds: the papers by member, each of which only its own member's client is sent. */
export const TablePapers = schema({ papers: t.map(memberPaper.Class).view() }, 'TablePapers');
export type TablePapers = SchemaType<typeof TablePapers>;

/** A paper with every structure in place, ready for `writePaper` and for a client's view. */
export function createPaper(view: TableView): MemberPaper {
  const paper = new memberPaper.Class();
  writePaper(paper, view);
  return paper;
}

/** Writes down what a member is shown. Only what differs from what stands there travels. */
export function writePaper(paper: MemberPaper, view: TableView): void {
  memberPaper.write(paper, view);
}
