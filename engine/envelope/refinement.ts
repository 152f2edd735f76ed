/**
 * Which nodes of a grid to look at next, without taking the region inside to be of any shape: the grid is first cut into
 * coarse blocks, whose corners are looked at; a block in which two nodes differ in class is cut in four; and so on down to
 * single steps. A block whose nodes all agree is left as it is, and its other nodes are inferred.
 *
 * A block counts all nodes looked at in it, those on its rim too, so a neighbor that was cut finely wakes it up. An island or
 * a strip is missed only when it slips between the nodes of the first pass.
 */

/** Nodes from (left, low) to (right, high), both included. */
export interface Block {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

export interface GridSize {
  readonly columns: number;
  readonly rows: number;
}

export function coarseBlocks(size: GridSize, step: number): readonly Block[] {
  const columns = cuts(size.columns, step);
  const rows = cuts(size.rows, step);
  return rows
    .slice(1)
    .flatMap((high, j) =>
      columns.slice(1).map((right, i) => ({ left: columns[i] ?? 0, right, low: rows[j] ?? 0, high })),
    );
}

/** The blocks that take the place of one: itself when it cannot be cut. */
export function cutBlock({ left, right, low, high }: Block): readonly Block[] {
  const columns = halves(left, right);
  const rows = halves(low, high);
  return rows
    .slice(1)
    .flatMap((to, j) =>
      columns.slice(1).map((end, i) => ({ left: columns[i] ?? left, right: end, low: rows[j] ?? low, high: to })),
    );
}

export function isSingle({ left, right, low, high }: Block): boolean {
  return right - left <= 1 && high - low <= 1;
}

/** Node numbers of the corners. */
export function blockCorners({ left, right, low, high }: Block, size: GridSize): readonly number[] {
  return [low, high].flatMap((row) => [left, right].map((column) => row * size.columns + column));
}

/** All node numbers of a block, rim included, row by row. */
export function blockNodes({ left, right, low, high }: Block, size: GridSize): readonly number[] {
  const nodes: number[] = [];
  for (let row = low; row <= high; row++)
    for (let column = left; column <= right; column++) nodes.push(row * size.columns + column);
  return nodes;
}

/**
 * One node inside a coarse block, at another row and column from block to block: a strip along the grid, however thin, is met
 * once it is as many blocks long as a block has inner rows or columns.
 */
export function innerNode({ left, right, low, high }: Block, size: GridSize, step: number): readonly number[] {
  const [width, height] = [right - left - 1, high - low - 1];
  if (width < 1 || height < 1) return [];
  const [i, j] = [Math.round(left / step), Math.round(low / step)];
  return [(low + 1 + ((i + j) % height)) * size.columns + left + 1 + ((i + 2 * j) % width)];
}

function cuts(count: number, step: number): readonly number[] {
  const places: number[] = [];
  for (let place = 0; place < count - 1; place += step) places.push(place);
  return [...places, count - 1];
}

function halves(from: number, to: number): readonly number[] {
  return to - from <= 1 ? [from, to] : [from, Math.floor((from + to) / 2), to];
}
