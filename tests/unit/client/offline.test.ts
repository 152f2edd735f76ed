import { describe, expect, it } from 'vitest';
import { outdatedStores, partOf, storeOf } from '../../../client/offline/answers.ts';

const BUILT = { version: 'b3', files: ['./', 'assets/index-abc.js', 'plumb.svg'] };
const SCOPE = 'https://kilter.test/';
const get = (path: string, mode = 'cors') => ({ method: 'GET', mode, url: SCOPE + path });

describe('the worker that keeps the page', () => {
  it.each([
    ['', 'page'],
    ['?table=HKTVRQ', 'page'],
    ['index.html?start=low', 'page'],
    ['elsewhere', undefined],
    ['api/health', undefined],
  ])('answers a visit of "%s" as that of %s', (path, part) => {
    expect(partOf(get(path, 'navigate'), SCOPE, BUILT)).toBe(part);
  });

  it.each([
    ['assets/index-abc.js', 'part'],
    ['plumb.svg', 'part'],
    ['assets/index-old.js', undefined],
    ['', undefined],
    ['api/origins', undefined],
    ['api/health', undefined],
    ['matchmake/join/table', undefined],
  ])('answers a request for "%s" as one for %s', (path, part) => {
    expect(partOf(get(path), SCOPE, BUILT)).toBe(part);
  });

  it('leaves alone what is no plain question, and what is not of this page', () => {
    expect(partOf({ ...get('assets/index-abc.js'), method: 'POST' }, SCOPE, BUILT)).toBeUndefined();
    expect(partOf({ ...get(''), url: 'https://other.test/plumb.svg' }, SCOPE, BUILT)).toBeUndefined();
    // under a path of its own it keeps to that
    expect(partOf(get('plumb.svg'), `${SCOPE}kilter/`, BUILT)).toBeUndefined();
    expect(partOf(get('kilter/plumb.svg'), `${SCOPE}kilter/`, BUILT)).toBe('part');
  });

  it('lets go of all builds but its own and the one before, and of nobody else’s store', () => {
    const own = storeOf(BUILT);
    expect(own).toContain('b3');
    const stores = ['kilter-b1', 'kilter-b2', 'another', own];
    expect(outdatedStores(stores, own)).toEqual(['kilter-b1']);
    expect(outdatedStores([own], own)).toEqual([]);
  });
});
