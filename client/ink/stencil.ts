import type { Mark, Pen } from './pen.ts';

/** Where a body's own drawing lies on the sheet. */
export interface Placement {
  /** Of the body's origin [px]. */
  readonly x: number;
  readonly y: number;
  /** [px/m] */
  readonly scale: number;
  /** Counter-clockwise as seen [rad]. */
  readonly angle: number;
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/**
 * Draws in a body's own meters (x right, y up, angles counter-clockwise) while lines keep the width of the sheet: a
 * drawing gets larger without getting coarser.
 */
export class Stencil {
  readonly pen: Pen;
  readonly placement: Placement;
  readonly #cos: number;
  readonly #sin: number;

  constructor(pen: Pen, placement: Placement) {
    this.pen = pen;
    this.placement = placement;
    this.#cos = Math.cos(placement.angle) * placement.scale;
    this.#sin = Math.sin(placement.angle) * placement.scale;
  }

  /** The same stencil with its origin moved to x, y of this one. */
  shifted(x: number, y: number): Stencil {
    const spot = this.spot(x, y);
    return new Stencil(this.pen, { ...this.placement, x: spot.x, y: spot.y });
  }

  /** Where a point of the body lies on the sheet [px]. */
  spot(x: number, y: number): Spot {
    return {
      x: this.placement.x + x * this.#cos - y * this.#sin,
      y: this.placement.y - x * this.#sin - y * this.#cos,
    };
  }

  moveTo(x: number, y: number): this {
    const spot = this.spot(x, y);
    this.pen.moveTo(spot.x, spot.y);
    return this;
  }

  lineTo(x: number, y: number): this {
    const spot = this.spot(x, y);
    this.pen.lineTo(spot.x, spot.y);
    return this;
  }

  curveTo(controlX: number, controlY: number, x: number, y: number): this {
    const control = this.spot(controlX, controlY);
    const spot = this.spot(x, y);
    this.pen.curveTo(control.x, control.y, spot.x, spot.y);
    return this;
  }

  /** Angles counter-clockwise from the body's +x; the arc runs counter-clockwise unless `clockwise`. */
  arc(x: number, y: number, radius: number, from: number, to: number, clockwise = false): this {
    const center = this.spot(x, y);
    const turn = this.placement.angle;
    this.pen.arc(center.x, center.y, radius * this.placement.scale, -from - turn, -to - turn, !clockwise);
    return this;
  }

  circle(x: number, y: number, radius: number): this {
    this.moveTo(x + radius, y);
    this.arc(x, y, radius, 0, 2 * Math.PI);
    return this.close();
  }

  /** A straight line between two points, as a path of its own. */
  line(fromX: number, fromY: number, toX: number, toY: number): this {
    return this.moveTo(fromX, fromY).lineTo(toX, toY);
  }

  outline(points: readonly (readonly [number, number])[], closed = true): this {
    points.forEach(([x, y], index) => (index === 0 ? this.moveTo(x, y) : this.lineTo(x, y)));
    return closed ? this.close() : this;
  }

  /** Upright rectangle in the body frame. */
  box(left: number, bottom: number, right: number, top: number): this {
    return this.outline([
      [left, bottom],
      [right, bottom],
      [right, top],
      [left, top],
    ]);
  }

  close(): this {
    this.pen.close();
    return this;
  }

  paint(mark: Mark): this {
    this.pen.paint(mark);
    return this;
  }
}
