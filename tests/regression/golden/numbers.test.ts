import { describe, expect, it } from 'vitest';
import { readGolden } from './readGolden.ts';
import { goldenStudies } from './studies.ts';
import { goldenTouchdowns } from './touchdowns.ts';

const golden = readGolden();

describe('numbers', () => {
  it('[RE13] of touchdowns and tip limits come out to the bit', () => {
    expect(goldenTouchdowns()).toEqual(golden.touchdowns);
  });

  it('[RE13] of studies come out to the bit', () => {
    expect(goldenStudies()).toEqual(golden.studies);
  });
});
