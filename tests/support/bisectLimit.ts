/** Largest speed of an interval at which `falls` is still false: bisection; the ends are asserted. */
export function bisectLimit(low: number, high: number, turns: number, falls: (speed: number) => boolean): number {
  if (falls(low)) throw new Error(`falls at the low end, ${low}`);
  if (!falls(high)) throw new Error(`stays up at the high end, ${high}`);
  for (let turn = 0; turn < turns; turn++) {
    const middle = (low + high) / 2;
    if (falls(middle)) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
