/** A homogeneous block of half width b and half height h [m], standing on its lower edge. */
export interface BlockSize {
  readonly b: number;
  readonly h: number;
}

/** A block at rest on level ground in some general-purpose engine. */
export interface TippingBlock {
  step(): void;
  /** Counter-clockwise from upright [rad]. */
  angle(): number;
  /** [rad/s] */
  rate(): number;
  /** Sets the velocity of the center and the rate of turn [m/s], [rad/s]. */
  move(vx: number, vy: number, rate: number): void;
}

/**
 * Rate at which a block that turns about its lower edge just reaches its balance point [rad/s].
 *
 *   ω = √(2 m g (L − h) / I_P),   I_P = m (4/3) L²                energy; block about its edge
 *
 * L² = b² + h²
 */
export function balancingRate({ b, h }: BlockSize, gravity: number): number {
  const square = b * b + h * h;
  return Math.sqrt((2 * gravity * (Math.sqrt(square) - h)) / ((4 / 3) * square));
}

/** Kicks the block into a turn about its lower right corner; true when it falls over, false when it comes back. */
function fallsOver(block: TippingBlock, { b, h }: BlockSize, rate: number, stepRate: number): boolean {
  block.move(rate * h, rate * b, -rate);
  for (let i = 0; i < 60 * stepRate; i++) {
    block.step();
    const turned = -block.angle();
    // well past balance, or on the way back with little left
    if (turned > Math.atan(b / h) + 0.2) return true;
    if (block.rate() > 0 && turned < 0.5 * Math.atan(b / h)) return false;
  }
  throw new Error('The block neither fell nor came back within a minute.');
}

/** Least rate that topples a fresh block, by bisection around the analytic one [rad/s]. */
export function toppleRate(
  stand: () => TippingBlock,
  size: BlockSize,
  { gravity, stepRate }: { readonly gravity: number; readonly stepRate: number },
): number {
  const exact = balancingRate(size, gravity);
  let [low, high] = [0.8 * exact, 1.2 * exact];
  for (let i = 0; i < 16; i++) {
    const middle = (low + high) / 2;
    if (fallsOver(stand(), size, middle, stepRate)) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
