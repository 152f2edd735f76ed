/** Invented first names for people who join without giving theirs. */
export const CREW_NAMES = [
  'Wren',
  'Ines',
  'Tomasz',
  'Sable',
  'Orla',
  'Piet',
  'Juno',
  'Marek',
  'Linnea',
  'Idris',
  'Freya',
  'Anselm',
  'Noor',
  'Cosmo',
  'Tamsin',
  'Ravi',
] as const;
