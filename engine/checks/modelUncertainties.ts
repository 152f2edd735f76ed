/** How far a model may be off, as measurements say or as nobody has measured. */
export interface ModelUncertainty {
  readonly model: string;
  readonly words: string;
  readonly source: string;
}

/** Stated beside the checks; none of it enters an interval. */
export const MODEL_UNCERTAINTIES: readonly ModelUncertainty[] = [
  {
    model: 'rocking, plastic pivot',
    words:
      'keeps too much of the rate at an impact: measured over predicted 0.95 on concrete and 0.67 on rubber for blocks of aspect 5, 0.97 on concrete for aspect 3, so the model is 3 to 5 % high on hard ground and half as high again on a soft one',
    source: '[ElGawady], abstract seen',
  },
  {
    model: 'rocking, plastic pivot',
    words:
      'and may keep too little: other experiments lose less than predicted, since edges touch last; short blocks bounce after each impact, which no pivot here does, so trust slender bodies more than squat ones',
    source: '[TherKollar2016], [Lipscombe1993], abstracts seen',
  },
  {
    model: 'crushing legs',
    words:
      'take no account of rate: the plateau stress of aluminum honeycomb rises by 10 to 19 % from static to impact rates, so a stage set from static tests pushes so much harder and crushes so much less',
    source: '[Materials2022], abstract seen',
  },
  {
    model: 'crushing legs',
    words:
      'crush at the force that the lander file states; no check holds such a force against the cells that would give it',
    source: 'no comparison made',
  },
  {
    model: 'soil',
    words:
      'with the constants of the check it bears 1.7 to 4.2 N/cm^2 from 2 to 5 cm deep where 2 to 6 was measured, and 2.7 fitted another site: 17 to 31 % too soft there; trenches plowed by sliding pads are not modeled',
    source: '[JGR1969], abstracts seen',
  },
  {
    model: 'touchdown simulation',
    words:
      'model tests: no overturn at friction 0.4 in any condition tested, some at 0.7 to 1.0; greatest accelerations 2 g normal and 1.75 g longitudinal, 12.5 rad/s^2. Which attitudes, masses and leg forces gave them is not known to us: the order of magnitude is compared, no run is re-played',
    source: '[NTRS20070030982], abstract seen',
  },
  {
    model: 'tip limit',
    words:
      'of a tall lander on a slope it hangs on the assumed damping of legs and ground and on the stiffness of the legs across: Steeple without secondary struts on 8 deg at 1.5 m/s down tips from 0.34 m/s at friction 1, from 0.15 to 0.20 in another engine, and from 0.10 to 0.12 here with half of critical damping instead of a fifth. Read it to 0.1 to 0.2 m/s there, not to its last digit',
    source: 'tests/validation/touchdown/outsideLander.test.ts and runs beside it',
  },
];
