/** Upright against lying: the same lander both ways, with what lying down buys and what it costs. */
import type { Lander } from '../lander/lander.ts';
import { assessLander, type ComparedLanding, type LanderAssessment } from './assessLander.ts';
import { worstUse } from './gearLoad.ts';
import { layOnSide, suggestSideLegs, type SideLegs } from './layOnSide.ts';

interface CompareOptions extends ComparedLanding {
  readonly sideLegs?: SideLegs;
}

export interface UprightLying {
  readonly upright: LanderAssessment;
  readonly lying: LanderAssessment;
  readonly sideLegs: SideLegs;
  readonly rows: readonly ComparedRow[];
  /** Rows that are better lying, and rows that are worse. */
  readonly buys: readonly ComparedRow[];
  readonly costs: readonly ComparedRow[];
  /** What no figure shows. */
  readonly consequences: readonly Consequence[];
}

export interface ComparedRow {
  readonly quantity: string;
  readonly unit: string;
  /** undefined: there is no such figure, as for a lander that does not stand. */
  readonly upright: number | undefined;
  readonly lying: number | undefined;
  readonly better: 'upright' | 'lying' | 'neither';
}

interface Consequence {
  readonly id: string;
  readonly text: string;
}

/** Costs and gains that the model does not put into figures. */
const CONSEQUENCES: readonly Consequence[] = [
  {
    id: 'ascent',
    text: 'The main engine points along the ground: it can neither brake the descent nor lift off until the body is raised again.',
  },
  {
    id: 'second engines',
    text: 'A second set of engines along the belly, with its feed lines, has to carry the descent; its mass is not counted here.',
  },
  { id: 'outlets', text: 'Propellant settles along the wall of the tanks, away from outlets at their ends.' },
  { id: 'bending', text: 'The body is bent across its length, which a stacked body never is on the ground.' },
  { id: 'reach', text: 'Load bays lie near the ground along the whole body instead of high above it.' },
];

export function compareUprightLying(lander: Lander, options: CompareOptions): UprightLying {
  const sideLegs = options.sideLegs ?? suggestSideLegs(lander);
  const upright = assessLander(lander, options);
  // the same tube both ways, turned
  const lying = assessLander(layOnSide(lander, sideLegs), { ...options, tube: options.tube ?? upright.gear.tube });
  const rows = compareAssessments(upright, lying);
  return {
    upright,
    lying,
    sideLegs,
    rows,
    buys: rows.filter(({ better }) => better === 'lying'),
    costs: rows.filter(({ better }) => better === 'upright'),
    consequences: CONSEQUENCES,
  };
}

/** The figures of two assessments side by side; also for two landers that were never one. */
function compareAssessments(upright: LanderAssessment, lying: LanderAssessment): readonly ComparedRow[] {
  return FIGURES.map(({ quantity, unit, wanted, read }) => {
    const [a, b] = [read(upright), read(lying)];
    return { quantity, unit, upright: a, lying: b, better: betterOf(a, b, wanted) };
  });
}

interface Figure {
  readonly quantity: string;
  readonly unit: string;
  readonly wanted: 'more' | 'less' | 'either';
  readonly read: (assessment: LanderAssessment) => number | undefined;
}

const FIGURES: readonly Figure[] = [
  { quantity: 'trip limit, plastic', unit: 'm/s', wanted: 'more', read: ({ standing }) => standing?.plastic },
  { quantity: 'trip limit, lossless', unit: 'm/s', wanted: 'more', read: ({ standing }) => standing?.lossless },
  { quantity: 'static tilt', unit: 'rad', wanted: 'more', read: ({ standing }) => standing?.staticTilt },
  { quantity: 'half stance', unit: 'm', wanted: 'more', read: ({ standing }) => standing?.leastHalfStance },
  { quantity: 'center height', unit: 'm', wanted: 'less', read: ({ centerHeight }) => centerHeight },
  {
    quantity: 'inertia about the tip edge',
    unit: 'kg·m²',
    wanted: 'either',
    read: ({ standing }) => standing?.edgeInertia,
  },
  { quantity: 'clearance', unit: 'm', wanted: 'more', read: ({ clearance }) => clearance },
  { quantity: 'mass', unit: 'kg', wanted: 'less', read: ({ mass }) => mass },
  { quantity: 'mass of the legs', unit: 'kg', wanted: 'less', read: ({ gear }) => gear.legMass },
  { quantity: 'center shift by liquid', unit: 'm', wanted: 'less', read: ({ liquid }) => liquid.centerShift },
  { quantity: 'slowest slosh', unit: 'rad/s', wanted: 'either', read: ({ liquid }) => liquid.slowestMode },
  {
    quantity: 'largest bending moment',
    unit: 'N·m',
    wanted: 'less',
    read: ({ gear }) => Math.max(...gear.cases.map(({ moment }) => Math.abs(moment))),
  },
  {
    quantity: 'utilization of the tube',
    unit: '-',
    wanted: 'less',
    read: ({ gear }) => Math.max(...gear.cases.map(worstUse)),
  },
];

/** Figures this near to each other count as equal [-]: an engineer would not choose by them. */
const ALIKE = 1e-9;

function betterOf(a: number | undefined, b: number | undefined, wanted: Figure['wanted']): ComparedRow['better'] {
  if (wanted === 'either' || (a === undefined && b === undefined)) return 'neither';
  if (a === undefined) return 'lying';
  if (b === undefined) return 'upright';
  if (Math.abs(a - b) <= ALIKE * Math.max(Math.abs(a), Math.abs(b))) return 'neither';
  return a > b === (wanted === 'more') ? 'upright' : 'lying';
}
