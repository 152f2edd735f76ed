import type { TableView } from '../../engine/table/index.ts';
import { commonShape } from './commonShape.ts';
import { ownShape } from './ownShape.ts';
import type { Paper } from './paperKind.ts';
import { createReader } from './reader.ts';

const readCommon = createReader(commonShape);
const readOwn = createReader(ownShape);

/** The view that the common paper and a member's own carry: plain data of its own, which later patches do not touch. */
export function readPapers(common: Paper, own: Paper): TableView {
  return { ...readCommon(common), ...readOwn(own) };
}
