import { figure } from '../../engine/figures.ts';
import type { Command } from 'commander';
import { CONDITION_FIELDS } from '../../engine/condition/index.ts';
import type { Lander } from '../../engine/lander/index.ts';
import { atan, toDegrees } from '../../engine/math/index.ts';
import type { Terrain } from '../../engine/ground/index.ts';
import { createGround, findSite, parseSiteText, SITE_BUDGET, SITES, type Site } from '../../levels/index.ts';
import { accepted } from './problems.ts';
import { addField, echoFields, type FieldOptions } from './fieldOptions.ts';
import { textParser } from './quantity.ts';
import { readFile } from './readFile.ts';
import { oneLine, UsageError } from './usageError.ts';

/** A site of the levels as the ground of a touchdown. */
export interface SiteOptions extends FieldOptions<'siteSeed' | 'siteX' | 'siteAzimuthDeg'> {
  readonly site?: string;
}

const SITE_IDS = SITES.map((site) => site.id).join(', ');
const DEFAULT_SITE_SEED = CONDITION_FIELDS.siteSeed.fallback;

/** Options that mean nothing without a site. */
const WITH_SITE = {
  siteSeed: '--site-seed',
  siteX: '--site-x',
  siteAzimuth: '--site-azimuth',
} as const satisfies Partial<Record<keyof SiteOptions, string>>;

export function addSiteOptions(command: Command): Command {
  command.option(
    '--site <name>',
    `in place of a slope: the uneven section of a site, one of ${SITE_IDS}, or a site file`,
    textParser,
  );
  return addField(addField(addField(command, 'siteSeed'), 'siteX'), 'siteAzimuthDeg');
}

/** A site made ready: x = 0 is the place of touchdown. */
export interface SiteGround {
  readonly name: string;
  readonly terrain: Terrain;
}

export function readSite(options: SiteOptions): SiteGround | undefined {
  const { site: word, siteSeed = DEFAULT_SITE_SEED, siteX = 0 } = options;
  if (word === undefined) {
    const alone = Object.entries(WITH_SITE).find(([name]) => name in options);
    if (alone !== undefined) throw new UsageError(`${alone[1]} goes with --site`);
    return undefined;
  }
  const site = siteNamed(word);
  const half = site.ground.width / 2;
  if (Math.abs(siteX) > half)
    throw new UsageError(`--site-x: expected a place on ${site.name}, from ${-half} to ${half} m, got ${siteX}`);
  const terrain = createGround(site, siteSeed);
  return { name: site.name, terrain: { ...terrain, firstX: terrain.firstX - siteX } };
}

function siteNamed(nameOrPath: string): Site {
  const builtIn = findSite(nameOrPath.toLowerCase());
  if (builtIn !== undefined) return builtIn;
  const text = readFile(nameOrPath, 'a site file', SITE_BUDGET);
  if (text !== undefined) return accepted(nameOrPath, parseSiteText(text));
  throw new UsageError(
    `--site: no site '${oneLine(nameOrPath, 80)}': neither built in (${SITE_IDS}) nor a file that exists`,
  );
}

/** What was asked, defaults filled in; null without a site. */
export function echoSite(options: SiteOptions): Readonly<Record<string, unknown>> {
  if (options.site === undefined) return { site: null, siteSeed: null, siteX: null, siteAzimuthDeg: null };
  return { site: options.site, ...echoFields(options, ['siteSeed', 'siteX', 'siteAzimuthDeg']) };
}

/** Mean slope of a site under the stance of a lander, + where it falls the way the section runs [deg]. */
export function slopeUnder({ terrain }: SiteGround, lander: Lander): number {
  const reach = Math.max(...lander.legs.map(({ footpad: [x, y] }) => Math.sqrt(x * x + y * y)));
  return toDegrees(atan((heightAt(terrain, -reach) - heightAt(terrain, reach)) / (2 * reach)));
}

/** Such as "Ravel Bank (seed 1) at 30 m, falling 11.4 deg under the stance". */
export function describeSite({ name }: SiteGround, options: SiteOptions, slopeDeg: number): string {
  const { siteSeed = DEFAULT_SITE_SEED, siteX = 0, siteAzimuth = 0 } = options;
  const turned = siteAzimuth === 0 ? '' : `, its section toward azimuth ${siteAzimuth} deg`;
  const slope = `${slopeDeg < 0 ? 'rising' : 'falling'} ${figure(Math.abs(slopeDeg), 1)} deg under the stance`;
  return `${name} (seed ${siteSeed}) at ${siteX} m${turned}, ${slope}`;
}

/** Straight between the heights, and straight on beyond the ends, as the simulation takes them. */
function heightAt({ firstX, spacing, heights }: Terrain, x: number): number {
  const place = (x - firstX) / spacing;
  const index = Math.max(0, Math.min(heights.length - 2, Math.floor(place)));
  const [left = 0, right = 0] = heights.slice(index, index + 2);
  return left + (place - index) * (right - left);
}
