import { describe, expect, it } from 'vitest';
import { rad } from '../../../src/geom/vec.ts';
import { boxMesh, meshOf } from '../../support/meshes.ts';
import { BOX_EDGES, foamOf, partedAlong } from './support.ts';

const SIDE_MM = 100;

/**
 * A level panel whose straight front edge folds down by one angle on its first half and by another on its second, a panel hanging from each.
 *
 *     4 ------------- 3
 *     |               |
 *     0 ----- 1 ----- 2
 *     | first | other |
 */
function twoFlaps(firstDeg: number, otherDeg: number) {
  const drop = (x: number, foldDeg: number): [number, number, number] => [
    x,
    -SIDE_MM * Math.cos(rad(foldDeg)),
    -SIDE_MM * Math.sin(rad(foldDeg)),
  ];
  const mesh = meshOf(
    [
      [0, 0, 0],
      [SIDE_MM, 0, 0],
      [2 * SIDE_MM, 0, 0],
      [2 * SIDE_MM, SIDE_MM, 0],
      [0, SIDE_MM, 0],
      drop(0, firstDeg),
      drop(SIDE_MM, firstDeg),
      drop(SIDE_MM, otherDeg),
      drop(2 * SIDE_MM, otherDeg),
    ],
    [
      [0, 1, 4],
      [1, 2, 3],
      [1, 3, 4],
      [5, 6, 1, 0],
      [7, 8, 2, 1],
    ],
  );
  const pairs = [
    [0, 1],
    [1, 2],
  ] as const;
  return foamOf(partedAlong(mesh, pairs, { thicknessMm: 10, modelIs: 'face', neutralFraction: 1 }));
}

const stepOf = ({ findings }: ReturnType<typeof twoFlaps>) => findings.find(({ code }) => code === 'foam/corner-step');

describe('two folds in line', () => {
  it('leave a step in the back edge as long as their bevels differ, and it is told', () => {
    const found = stepOf(twoFlaps(60, 20));
    const stepMm = 10 * (Math.tan(rad(30)) - Math.tan(rad(10)));
    expect(found?.value).toBeCloseTo(stepMm, 9);
    expect(found).toMatchObject({ severity: 'note', limit: 0.5, unit: 'mm', where: { part: 'part-1', vertices: [1] } });
    expect(found?.text).toContain(`a step of ${stepMm.toFixed(1)} mm:`);
  });

  it('say nothing where the step is less than a hand strays, or there is none', () => {
    expect(stepOf(twoFlaps(60, 57))).toBeUndefined();
    expect(stepOf(twoFlaps(40, 40))).toBeUndefined();
  });
});

it('says nothing of corners whose edges meet', () => {
  expect(stepOf(foamOf(partedAlong(boxMesh(SIDE_MM), BOX_EDGES)))).toBeUndefined();
});
