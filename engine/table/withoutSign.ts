/** −0 becomes 0, so that equal inputs have equal bits. */
export function withoutSign(value: number): number {
  return value === 0 ? 0 : value;
}
