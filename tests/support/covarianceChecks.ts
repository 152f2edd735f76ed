/** Lower triangle L with L·Lᵀ = the leading `size` rows and columns of a matrix of `stride`; undefined where it is not positive. */
export function cholesky(matrix: ArrayLike<number>, stride: number, size: number): readonly number[][] | undefined {
  const lower = Array.from({ length: size }, () => Array.from({ length: size }, () => 0));
  for (let i = 0; i < size; i++)
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * stride + j]!;
      for (let k = 0; k < j; k++) sum -= lower[i]![k]! * lower[j]![k]!;
      if (i === j && !(sum > 0)) return undefined;
      lower[i]![j] = i === j ? Math.sqrt(sum) : sum / lower[j]![j]!;
    }
  return lower;
}

/** Normalized error squared: eᵀ·P⁻¹·e over the leading states. */
export function normalizedSquare(error: readonly number[], covariance: ArrayLike<number>, stride: number): number {
  const lower = cholesky(covariance, stride, error.length);
  if (lower === undefined) throw new Error('A covariance must be positive.');
  const solved: number[] = [];
  for (let i = 0; i < error.length; i++) {
    let sum = error[i]!;
    for (let k = 0; k < i; k++) sum -= lower[i]![k]! * solved[k]!;
    solved.push(sum / lower[i]![i]!);
  }
  return solved.reduce((total, value) => total + value * value, 0);
}

/** The largest difference between an entry and its mirror image. */
export function asymmetry(matrix: ArrayLike<number>, size: number): number {
  let most = 0;
  for (let i = 0; i < size; i++)
    for (let j = 0; j < i; j++) most = Math.max(most, Math.abs(matrix[i * size + j]! - matrix[j * size + i]!));
  return most;
}

/** The same with every variance 1, so that states of any unit count alike. */
export function correlations(matrix: ArrayLike<number>, size: number): readonly number[] {
  return Array.from({ length: size * size }, (_, place) => {
    const [i, j] = [Math.floor(place / size), place % size];
    return matrix[place]! / Math.sqrt(matrix[i * size + i]! * matrix[j * size + j]!);
  });
}
