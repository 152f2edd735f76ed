import type { Placement } from '../ink/stencil.ts';

/** What of the section is seen: the point [m] in the middle of the free part of the sheet, and the scale [px/m]. */
export interface Framing {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

/** The sheet in pixels, and how much of each side lies under cards. */
interface SheetSize {
  readonly width: number;
  readonly height: number;
  readonly covered: Insets;
}

interface Insets {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export const NO_INSETS: Insets = { left: 0, top: 0, right: 0, bottom: 0 };

/** The one place where meters become pixels and back: section x right and y up, sheet x right and y down. */
export class SectionCamera {
  size: SheetSize = { width: 1, height: 1, covered: NO_INSETS };
  framing: Framing = { x: 0, y: 0, scale: 10 };

  get freeWidth(): number {
    return Math.max(1, this.size.width - this.size.covered.left - this.size.covered.right);
  }

  get freeHeight(): number {
    return Math.max(1, this.size.height - this.size.covered.top - this.size.covered.bottom);
  }

  /** [m] to [px] */
  sheetX(x: number): number {
    return this.size.covered.left + this.freeWidth / 2 + (x - this.framing.x) * this.framing.scale;
  }

  /** [m] to [px] */
  sheetY(y: number): number {
    return this.size.covered.top + this.freeHeight / 2 - (y - this.framing.y) * this.framing.scale;
  }

  /** [px] to [m] */
  sectionX(px: number): number {
    return this.framing.x + (px - this.size.covered.left - this.freeWidth / 2) / this.framing.scale;
  }

  /** [px] to [m] */
  sectionY(px: number): number {
    return this.framing.y - (px - this.size.covered.top - this.freeHeight / 2) / this.framing.scale;
  }

  /** The same sheet seen so many times as large, with the point x, y [m] where it was. */
  enlarged(times: number, x: number, y: number): SectionCamera {
    const nearer = new SectionCamera();
    nearer.size = this.size;
    const { framing } = this;
    nearer.framing = {
      x: x + (framing.x - x) / times,
      y: y + (framing.y - y) / times,
      scale: framing.scale * times,
    };
    return nearer;
  }

  /** A body whose origin is at x, y [m], turned counter-clockwise by the angle [rad]. */
  placement(x: number, y: number, angle: number): Placement {
    return { x: this.sheetX(x), y: this.sheetY(y), scale: this.framing.scale, angle };
  }
}
