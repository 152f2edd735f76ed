/** Small dense systems of linear equations. */
import { assert } from '../assert.ts';

/**
 * Solution x of A x = b, by Gaussian elimination with partial pivoting [GolubVanLoan2013] sec. 3.4. Undefined where a pivot
 * is below `matrix.length` rounding errors of the largest coefficient: A is singular, or as good as. For a few dozen unknowns.
 */
export function solveLinear(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
): readonly number[] | undefined {
  const size = right.length;
  assert(matrix.length === size && matrix.every((row) => row.length === size), 'a system has as many rows as unknowns');
  const rows = matrix.map((row, i) => Float64Array.of(...row, right[i] ?? NaN));
  const largest = Math.max(...matrix.flat().map((value) => Math.abs(value)));
  for (let column = 0; column < size; column++) {
    const pivotRow = bestPivot(rows, column);
    const pivot = rows[pivotRow]?.[column] ?? 0;
    if (!(Math.abs(pivot) > size * Number.EPSILON * largest)) return undefined;
    const swapped = rows[column]!;
    rows[column] = rows[pivotRow]!;
    rows[pivotRow] = swapped;
    for (let i = column + 1; i < size; i++) subtractRow(rows[i]!, rows[column]!, column);
  }
  const x = Array.from({ length: size }, () => 0);
  for (let i = size - 1; i >= 0; i--) {
    let sum = rows[i]![size]!;
    for (let j = i + 1; j < size; j++) sum -= rows[i]![j]! * x[j]!;
    x[i] = sum / rows[i]![i]!;
  }
  return x;
}

function bestPivot(rows: readonly Float64Array[], column: number): number {
  let best = column;
  for (let i = column + 1; i < rows.length; i++)
    if (Math.abs(rows[i]![column]!) > Math.abs(rows[best]![column]!)) best = i;
  return best;
}

/** Takes so much of the pivot row off that the entry in `column` vanishes. */
function subtractRow(row: Float64Array, pivotRow: Float64Array, column: number): void {
  const share = row[column]! / pivotRow[column]!;
  for (let j = column; j < row.length; j++) row[j]! -= share * pivotRow[j]!;
}
