import type { Framing, SectionCamera } from './sectionCamera.ts';

/** What has to be in the picture [m]. */
export interface Subject {
  /** Center of mass, and how far the lander reaches around it. */
  readonly x: number;
  readonly y: number;
  readonly reach: number;
  /** Height of the ground straight below. */
  readonly groundY: number;
}

/** Natural frequency of the follower [rad/s]: settles in about a second, and never overshoots. */
const STIFFNESS = 2.6;
/** Of its own motion the subject takes so much of the zoom along; the spring has the rest [-]. */
const ALONG = 0.75;
/** What is farther off than this from one frame to the next did not fly there, but is believed to be elsewhere [m]. */
const JUMP = 2;
/** Longest step that the follower takes at once [s]; a page that slept must not fling the picture. */
const LONGEST_STEP = 0.1;
/** Lander reaches that fit across the free part of the sheet at the closest: fewer on a narrow sheet. */
const CLOSEST = { wide: 5.6, narrow: 3.6 };
/** Share of the picture kept below the ground line for the cut ground. */
const GROUND_SHARE = 0.17;
/** Kept above the center of mass: reaches of the lander, and space for the scale over it [drafting units]. */
const HEADROOM = 1.5;
const SCALE_SPACE = 40;

/** The framing that shows the lander and the ground below it, as close as both allow. `unit`: pixels in a drafting unit. */
export function frameSubject(subject: Subject, camera: SectionCamera, unit: number, headroom = HEADROOM): Framing {
  const space = Math.max(1, camera.freeHeight * (1 - GROUND_SHARE) - SCALE_SPACE * unit);
  const top = subject.y + headroom * subject.reach;
  const air = Math.max(top - subject.groundY, 2 * subject.reach);
  const closest = camera.freeWidth > camera.freeHeight ? CLOSEST.wide : CLOSEST.narrow;
  const scale = Math.min(space / air, camera.freeWidth / (closest * subject.reach));
  // the ground line stays at its share of the picture; what is left over is sky
  const belowGround = (GROUND_SHARE * camera.freeHeight) / scale;
  return { x: subject.x, y: subject.groundY - belowGround + camera.freeHeight / scale / 2, scale };
}

/**
 * Moves a camera after its subject: along with the subject's own motion, and as a critically damped spring for the rest.
 * The scale is followed on its logarithm, so zooming in looks as steady as zooming out.
 */
export class Follower {
  readonly #camera: SectionCamera;
  #settled = false;
  #rate = { x: 0, y: 0, zoom: 0 };
  #last: Subject | undefined;

  constructor(camera: SectionCamera) {
    this.#camera = camera;
  }

  /** The next step goes straight to the subject. */
  cut(): void {
    this.#settled = false;
  }

  step(subject: Subject, seconds: number, unit: number): void {
    const camera = this.#camera;
    const wanted = frameSubject(subject, camera, unit);
    const last = this.#last;
    this.#last = subject;
    if (!this.#settled || last === undefined) {
      camera.framing = wanted;
      this.#rate = { x: 0, y: 0, zoom: 0 };
      this.#settled = true;
      return;
    }
    const step = Math.min(seconds, LONGEST_STEP);
    const { framing } = camera;
    const before = frameSubject(last, camera, unit);
    const share = Math.abs(subject.y - last.y) <= JUMP ? ALONG : 0;
    const moved = (from: number, to: number) => share * (to - from);
    const rate = this.#rate;
    const x = spring(framing.x + subject.x - last.x, rate.x, wanted.x, step);
    const y = spring(framing.y + moved(before.y, wanted.y), rate.y, wanted.y, step);
    const nearer = moved(Math.log(before.scale), Math.log(wanted.scale));
    const zoom = spring(Math.log(framing.scale) + nearer, rate.zoom, Math.log(wanted.scale), step);
    this.#rate = { x: x.rate, y: y.rate, zoom: zoom.rate };
    camera.framing = { x: x.value, y: y.value, scale: Math.exp(zoom.value) };
  }
}

/** One exact step of a critically damped spring toward `wanted`. */
function spring(value: number, rate: number, wanted: number, seconds: number): { value: number; rate: number } {
  const offset = value - wanted;
  const pull = rate + STIFFNESS * offset;
  const decay = Math.exp(-STIFFNESS * seconds);
  return {
    value: wanted + (offset + pull * seconds) * decay,
    rate: (rate - STIFFNESS * pull * seconds) * decay,
  };
}
