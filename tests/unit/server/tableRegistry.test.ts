import { describe, expect, it } from 'vitest';
import { createTableRegistry, type OpenTable } from '../../../server/rooms/index.ts';

interface Said {
  opener?: string;
  isJoined?: boolean;
  desertedSinceMs?: number;
}

function tableOf({ opener = 'a', isJoined = true, desertedSinceMs }: Said, ended: string[] = []): OpenTable {
  return {
    roomId: 'room',
    opener,
    isJoined,
    desertedSinceMs,
    hasPlace: () => false,
    hasAddress: (address) => address === opener,
    end: () => void ended.push(opener),
  };
}

describe('the registry of tables', () => {
  it('counts tables that somebody has joined, and bounds what one address opens either way', () => {
    const registry = createTableRegistry({ mostTables: 3, mostPerAddress: 2 });
    registry.open(tableOf({ opener: 'a', isJoined: false }));
    registry.open(tableOf({ opener: 'a' }));
    expect(registry.joined).toBe(1);
    expect(registry.refusalFor('a')).toBe('too many from there');
    expect(registry.refusalFor('b')).toBeUndefined();
    registry.open(tableOf({ opener: 'b' }));
    registry.open(tableOf({ opener: 'c' }));
    expect(registry.hasRoom()).toBe(false);
    expect(registry.refusalFor('d')).toBe('all in use');
  });

  it('ends the table that everybody left first, where all are in use, and none that was left just now', () => {
    const ended: string[] = [];
    const registry = createTableRegistry({ mostTables: 3, mostPerAddress: 9, now: () => 100_000 });
    registry.open(tableOf({ opener: 'a' }, ended));
    registry.open(tableOf({ opener: 'b', desertedSinceMs: 90_000 }, ended));
    registry.open(tableOf({ opener: 'c', desertedSinceMs: 80_000 }, ended));
    expect(registry.refusalFor('d')).toBe('all in use');
    const other = createTableRegistry({ mostTables: 2, mostPerAddress: 9, now: () => 100_000 });
    other.open(tableOf({ opener: 'e', desertedSinceMs: 60_000 }, ended));
    other.open(tableOf({ opener: 'f', desertedSinceMs: 50_000 }, ended));
    expect(other.refusalFor('d')).toBeUndefined();
    expect(ended).toEqual(['f']);
  });

  it('gives no two tables one code', () => {
    const drawn = ['BBBBBB', 'BBBBBB', 'CCCCCC'];
    const registry = createTableRegistry({ mostTables: 9, mostPerAddress: 9, draw: () => drawn.shift() ?? '' });
    expect([registry.open(tableOf({})), registry.open(tableOf({}))]).toEqual(['BBBBBB', 'CCCCCC']);
    registry.close('BBBBBB');
    expect(registry.find('BBBBBB')).toBeUndefined();
    expect(registry.open(tableOf({}), 'BBBBBB')).toBe('BBBBBB');
  });
});
