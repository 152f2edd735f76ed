/** What is said once of a field of a touchdown, for everybody who asks for it, prints it or looks it up. */
export interface ConditionField {
  /** Short, as a warning calls it: 'descent rate'. */
  readonly words: string;
  /** As an option, a schema or a form explains it: 'turn of the lander about the vertical'. */
  readonly meaning: string;
  /** As a person writes it; '-' for a ratio. */
  readonly unit: string;
  /** Smallest and largest accepted value, in that unit: they keep typing slips (a comma, a unit factor of 1000) out of results. */
  readonly least: number;
  readonly most: number;
  /** Only whole numbers. */
  readonly whole?: boolean;
  /** Where nothing is said; absent where it then does not enter, or has to be said. */
  readonly fallback?: number;
  /** Its name among the inputs of a campaign, where that is another. */
  readonly inCampaign?: string;
}

/** A field that is no number: a list of legs, the name of a site. */
export interface NamedField {
  readonly words: string;
  readonly inCampaign?: string;
}

/** Of the lander itself or of the work done: computed, never asked for. */
export interface DerivedField {
  readonly words: string;
  readonly unit: string;
}

/** An angle that may be given either way round. */
export const FULL_CIRCLE = { unit: 'deg', least: -360, most: 360 } as const;
