/** One factor of credibility, judged by ourselves. */
export interface CredibilityFactor {
  readonly factor: string;
  /** 0 to 4. */
  readonly level: number;
  readonly why: string;
}

/** The factors of NASA-STD-7009, from memory. A level goes up only with evidence that anybody can run. */
export const CREDIBILITY_FACTORS: readonly CredibilityFactor[] = [
  {
    factor: 'data pedigree',
    level: 1,
    why: 'landers and sites are invented; gravity comes from published constants quoted from memory',
  },
  {
    factor: 'verification',
    level: 3,
    why: 'closed forms to every printed digit, orders of convergence measured, energy accounted for, the same bits on several platforms, two implementations compared',
  },
  {
    factor: 'validation',
    level: 1,
    why: 'a few measured values, abstracts of model tests and trends; no touchdown test data at hand. Closed forms evaluated at our own inputs count as verification',
  },
  {
    factor: 'input pedigree',
    level: 1,
    why: 'the user supplies the lander, the ground and the state; every field is parsed and ranged, none is measured by us',
  },
  {
    factor: 'results uncertainty',
    level: 2,
    why: 'intervals, order statistics and stack-ups for stated input distributions; that of the models is stated where measurements give it, and enters no interval',
  },
  {
    factor: 'results robustness',
    level: 2,
    why: 'sensitivities and envelopes; the simulated limit beside the closed forms; the played outcome is compared with the stated limit and the differences are published',
  },
  { factor: 'use history', level: 0, why: 'none: no use outside its own tests' },
  {
    factor: 'management and process of modeling',
    level: 2,
    why: 'rules with identifiers and tests, sources by key, a change log of physics, results tied to a version',
  },
];

export const PERMITTED_USE =
  'Exercises, teaching, and early trade studies that compare landers among themselves. Never a decision about a real landing.';

export const SIMPLIFICATIONS: readonly string[] = [
  'The played descent is planar: the lander moves in the plane across the edge over which it tips most easily, each leg at its own place.',
  'The hull is rigid; tanks hold frozen liquid except where slosh is computed apart.',
  'Legs are massless, crush at constant force in stages, and are alike on one lander.',
  'The ground is rigid or an idealized soil; feet grip by Coulomb friction, without digging in or plowing.',
  'Closed-form trip limits hold for feet that land together on rigid legs. A tall lander that arrives upright on a slope falls far below them (half stance under some 0.8 of the height); the touchdown simulation shows it.',
  'The engine does not erode the ground, and its plume only hides it.',
  'Sensors are generic where they appear at all.',
];
