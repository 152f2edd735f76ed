import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { formatLander } from '../../engine/lander/index.ts';
import { standardCampaign } from '../../engine/study/index.ts';
import { plainLander } from './plainLander.ts';

/** A folder with the file of a lander and of a campaign of it, both small and quick to simulate: `lander.json`, `campaign.json`. */
export function plainFiles(): { readonly folder: string; readonly lander: string; readonly campaign: string } {
  const folder = mkdtempSync(path.join(tmpdir(), 'plain-'));
  const [lander, campaign] = [path.join(folder, 'lander.json'), path.join(folder, 'campaign.json')];
  const document = formatLander(plainLander({ mass: 1500, halfStance: 0.6, centerHeight: 2, inertia: 1000 }));
  writeFileSync(lander, `${JSON.stringify(document)}\n`);
  const inputs = {
    horizontalSpeed: { kind: 'rayleigh', scale: 0.8 },
    descentRate: { kind: 'constant', value: 1 },
    travelAzimuthDeg: { kind: 'uniform', low: 0, high: 360 },
    friction: { kind: 'uniform', low: 0.5, high: 1 },
  };
  writeFileSync(campaign, JSON.stringify({ ...standardCampaign(document), world: 'earth', inputs, runs: 60, seed: 7 }));
  return { folder, lander, campaign };
}
