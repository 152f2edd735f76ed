/** What lies on the screen for one scene. */
export interface HallPart {
  readonly node: HTMLElement;
  /** All that is given, in a line. */
  readonly facts: string;
  /** What the next press of the one key does; undefined: this scene is over, and it goes to the next. */
  readonly ahead: string | undefined;
  /** Everything has been seen: the answer may be said. */
  readonly isAnswered: boolean;
  forward(): void;
  /** Back to how it began; false: it has not begun. */
  rewind(): boolean;
  /** Up and down: what this scene lets one change. */
  nudge(way: 1 | -1): void;
  end(): void;
}
