import { describe, expect, it } from 'vitest';
import { SETTINGS, settingsText } from '../../../server/settings.ts';
import { readSource } from '../../support/sources.ts';

describe('the settings', () => {
  it('are all listed by --help and by the README of the server, and no others', () => {
    const names = SETTINGS.map(({ name }) => name);
    const inReadme = [...readSource('server/README.md').matchAll(/^\| `((?:KILTER_)?[A-Z_]+)` /gm)].map(
      (row) => row[1],
    );
    expect(new Set(inReadme)).toEqual(new Set<string>(names));
    for (const { name, usual, meaning } of SETTINGS) {
      expect(settingsText()).toContain(`${name} `);
      expect(settingsText()).toContain(`${meaning} (usual: ${usual}`);
    }
  });
});
