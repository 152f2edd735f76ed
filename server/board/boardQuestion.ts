import type { Campaign } from '../../engine/dispersion/index.ts';
import type { PlaneGrid, SensitivityName, ShapeField, StudyCase } from '../../engine/study/index.ts';
import type { World } from '../../engine/worlds.ts';

/** A file, or what stands in for one, that the report was made from. */
export interface BoardInput {
  readonly name: string;
  /** Of its bytes, hexadecimal. */
  readonly sha256: string;
  readonly bytes: number;
}

/** Everything that the report is made from: the same question gives the same bytes. */
export interface BoardQuestion {
  readonly asked: StudyCase;
  /** 'Trivet without leg 2'. */
  readonly name: string;
  /** 'on the Moon', 'at 2 m/s^2'. */
  readonly place: string;
  /** The lander as the command line is given it. */
  readonly word: string;
  /** World or gravity of the arrival, as an option; empty on the Moon. */
  readonly placeOption: string;
  readonly worlds: readonly World[];
  readonly slopesDeg: readonly number[];
  readonly grid: PlaneGrid;
  readonly campaign: Campaign;
  /** The campaign as `kilter disperse` is given it, with the options that make it this one. */
  readonly campaignWords: string;
  /** Drawn round stated arrivals of its own where no campaign was given. */
  readonly isStandardCampaign: boolean;
  /** Inputs that are changed one by one; none: the section says so. */
  readonly sensitivities: readonly SensitivityName[];
  /** Dimensions that are traded; none: the section is left out. */
  readonly trade: readonly ShapeField[];
  readonly inputs: readonly BoardInput[];
  /** The command that makes this report, but for the file that it writes. */
  readonly command: string;
  /** Of the program. */
  readonly version: string;
}
