import { schema, t, type SchemaType } from '@colyseus/schema';
import type { CommonView, OwnView } from '../../engine/table/index.ts';
import { commonShape } from './commonShape.ts';
import { ownShape } from './ownShape.ts';
import { createPaperKind, type Paper } from './paperKind.ts';

const commonPaper = createPaperKind(commonShape, 'CommonPaper');
const ownPaper = createPaperKind(ownShape, 'OwnPaper');

/**
 * What a room holds: the paper that lies in the middle, of which everybody is sent the same bytes, and the papers by member, each of which only its own
 * member's client is sent.
 */
export const TablePapers = schema(
  { common: t.ref(commonPaper.Class), papers: t.map(ownPaper.Class).view() },
  'TablePapers',
);
export type TablePapers = SchemaType<typeof TablePapers>;

/** Lays a member's own paper on the table, unless it lies there; with every structure in place, ready for a client's view. */
export function layPaper({ papers }: TablePapers, member: string): Paper {
  const paper = papers.get(member) ?? new ownPaper.Class();
  papers.set(member, paper);
  return paper;
}

/** Writes down what everybody is shown. Only what differs from what stands there travels. */
export function writeCommon({ common }: TablePapers, view: CommonView): void {
  commonPaper.write(common, view);
}

/** Writes down what one member is shown besides. */
export function writeOwn(paper: Paper, view: OwnView): void {
  ownPaper.write(paper, view);
}
