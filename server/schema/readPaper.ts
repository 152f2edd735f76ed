import type { TableView } from '../../engine/table/index.ts';
import { createReader } from './reader.ts';
import type { MemberPaper } from './tablePapers.ts';
import { tableShape } from './tableShape.ts';

const read = createReader(tableShape);

/** The view that a paper carries: plain data of its own, which later patches do not touch. */
export function readPaper(paper: MemberPaper): TableView {
  return read(paper);
}
