import { describe, expect, it } from 'vitest';
import { supportPolygon } from '../../../engine/statics/index.ts';

type Point = readonly [number, number];

function polygonOf(points: readonly Point[], foot: Point = [0, 0]) {
  const polygon = supportPolygon(points, foot);
  if (polygon.kind !== 'polygon') throw new Error('the points span an area');
  return polygon;
}

const square: readonly Point[] = [
  [1, 1],
  [-1, 1],
  [-1, -1],
  [1, -1],
];

describe('support polygon', () => {
  it('[ST1] goes round the outer points counter-clockwise, whatever their order', () => {
    const points: readonly Point[] = [[0.2, 0.1], ...square, [0, -0.5]];
    const { corners } = polygonOf(points);
    expect(corners.map((index) => points[index])).toEqual([
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ]);
  });

  it('[ST1] gives each edge its outward normal and the distance of the foot point', () => {
    const { edges } = polygonOf(square, [0.25, -0.5]);
    const round = edges.map(({ normal, distance }) => [normal / Math.PI, distance]);
    expect(round).toEqual([
      [-0.5, 0.5],
      [0, 0.75],
      [0.5, 1.5],
      [1, 1.25],
    ]);
  });

  it('[ST1] counts a distance negative when the foot point lies outside', () => {
    const { edges } = polygonOf(square, [1.5, 0]);
    expect(Math.min(...edges.map((edge) => edge.distance))).toBe(-0.5);
  });

  it('[ST1] leaves out points in the middle of an edge, exact or off by rounding', () => {
    const rows: readonly Point[] = [
      [1.9, -3.6],
      [1.9, 1e-16],
      [1.9 + 4e-16, 1.2],
      [1.9, 3.6],
      [-1.9, 3.6],
      [-1.9 - 4e-16, 0],
      [-1.9, -3.6],
    ];
    expect(polygonOf(rows).corners).toEqual([6, 0, 3, 4]);
  });

  it('[ST1] keeps a corner that stands out by a micrometer', () => {
    expect(polygonOf([...square, [1.000001, 0]]).corners).toHaveLength(5);
  });

  it('[ST1] keeps it wherever the points lie: what counts is their extent, not their place', () => {
    for (const [x, y] of [
      [1e4, 0],
      [0, 1e4],
      [-1e4, -1e4],
    ] as const) {
      const moved = [...square, [1.000001, 0] as const].map((point): Point => [point[0] + x, point[1] + y]);
      expect(polygonOf(moved, [x, y]).corners).toHaveLength(5);
    }
  });

  it('[ST1] takes a point given twice once', () => {
    const { corners } = polygonOf([...square, ...square]);
    expect(corners).toHaveLength(4);
  });

  it.each<readonly [string, readonly Point[]]>([
    ['no point', []],
    ['one point', [[1, 2]]],
    ['two points', square.slice(0, 2)],
    ['the same point thrice', [[1, 2], [1, 2], [1, 2]]], // prettier-ignore
    ['points in a slanting line', [[0, 0], [1, 0.1], [2, 0.2], [3, 0.3], [7, 0.7]]], // prettier-ignore
  ])('[ST1] is a line for %s', (_, points) => {
    expect(supportPolygon(points, [0, 0])).toEqual({ kind: 'line' });
  });
});
