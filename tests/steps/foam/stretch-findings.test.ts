import { describe, expect, it } from 'vitest';
import { rad } from '../../../src/geom/vec.ts';
import { boxOfPoints } from '../../../src/geom/ring.ts';
import { movePoints } from '../../../src/geom/turn-and-move.ts';
import type { FlatPiece } from '../../../src/model/flat-piece.ts';
import type { LeastRatio, WorstSpot } from '../../../src/model/forming.ts';
import { pieceSpots } from '../../../src/steps/foam/piece-spots.ts';
import { flatOf, foamOf, hingedFlat, hingeMesh, partedAlong } from './support.ts';

const SPOT: WorstSpot = {
  kind: 'stretch',
  triangle: 0,
  meshTriangle: 2,
  percent: 9,
  areaMm2: 500,
  at: { x: 0, y: 0 },
  point: [1, 2, 3],
  alongRad: 0,
  way: 'one',
};

const LEAST: LeastRatio = {
  ratio: 1.3,
  kind: 'dome',
  centreVertex: 1,
  centreTriangle: 2,
  centre: [0, 0, 0],
  radiusMm: 52.3,
  heldDeg: 45.6,
  defectDeg: 45.6,
  domeDeg: 45.6,
  saddleDeg: 0,
};

describe('findings of stretch', () => {
  const parted = partedAlong(hingeMesh(0), []);
  const [patch] = parted.patches;
  const { uv } = hingedFlat(patch, parted.layer.neutralPositions);
  const { minX, minY, maxX, maxY } = boxOfPoints(uv);
  const spot = { ...SPOT, at: { x: (minX + maxX) / 2, y: (minY + maxY) / 2 } };
  const of = (p99: number, change: Partial<FlatPiece>) => {
    const spread = { max: p99 + 1, p99, mean: 1 };
    return foamOf(parted, { flats: [flatOf(patch, uv, { stretchPct: spread, ...change })] }).findings;
  };

  it('name the worst spot and look at it', () => {
    const other = { ...spot, kind: 'squash' as const, percent: 20, point: [7, 8, 9] as const };
    const [finding] = of(9, { spots: [other, spot] });
    expect(finding.text).toMatch(/ In the middle: pull it .+\.$/);
    expect(finding.where.point).toEqual([1, 2, 3]);
    expect(of(9, { spots: [] })[0].where.point).toBeUndefined();
  });

  it('say when only another seam, a dart or warmth helps', () => {
    // The foam takes 8 per cent of either: (1 + 0.08) / (1 - 0.08) = 1.1739.
    const [asked] = of(9, { leastRatio: { ...LEAST, ratio: 1.174 } });
    expect(asked.text).toContain(
      'No way of laying it flat keeps all of it under 8.0 %, for it holds 46° of dome within 52 mm',
    );
    expect(asked.text).toContain('only another seam through that place, a dart there, or warmth helps');
    const [free] = of(9, { leastRatio: { ...LEAST, ratio: 1.1738 } });
    expect(free.text).not.toContain('only another seam');
    expect(free.text).toContain('even out the worst');
    expect(free.text).toContain('another seam is not the only way');
  });

  it('hold a notice against the limit of the notice', () => {
    // (1 + 0.03) / (1 - 0.03) = 1.0619.
    const [asked] = of(5, { leastRatio: { ...LEAST, ratio: 1.062, kind: 'saddle', heldDeg: -12.2 } });
    expect(asked).toMatchObject({ severity: 'note', limit: 3 });
    expect(asked.text).toContain('under 3.0 %, for it holds 12° of saddle');
    expect(of(5, { leastRatio: { ...LEAST, ratio: 1.061 } })[0].text).not.toContain('seam');
  });

  it('promise nothing where nothing is known', () => {
    for (const change of [{}, { leastRatio: { ...LEAST, ratio: 1, kind: 'flat' as const } }]) {
      expect(of(9, change)[0].text).toMatch(/: part it once more, or end a seam in it as a dart\.$/);
    }
  });

  it('say it once for stretch and squash together', () => {
    const findings = of(9, { squashPct: { max: 10, p99: 9, mean: 1 }, leastRatio: LEAST });
    expect(findings.map(({ code }) => code)).toEqual(['foam/stretch', 'foam/squash']);
    expect(findings.map(({ text }) => text.includes('No way of laying it flat'))).toEqual([true, false]);
    const [squash] = of(1, { squashPct: { max: 10, p99: 9, mean: 1 }, leastRatio: LEAST });
    expect(squash.text).toContain('No way of laying it flat');
  });

  it('pieces carry spots and ratio only where they were found', () => {
    const [known] = foamOf(parted, { flats: [flatOf(patch, uv, { spots: [spot], leastRatio: LEAST })] }).pieces;
    expect(known.leastRatio).toEqual({ ...LEAST, centreVertex: patch.meshVertices[LEAST.centreVertex] });
    expect(known.spots).toMatchObject([{ percent: 9, meshTriangle: 2, placeText: 'in the middle' }]);
    const [plain] = foamOf(parted).pieces;
    expect('spots' in plain || 'leastRatio' in plain).toBe(false);
  });
});

describe('words of spots', () => {
  /** A piece 100 wide and 60 high, lying turned by -30 degrees before it is turned upright. */
  const ring = Float64Array.of(-50, -30, 50, -30, 50, 30, -50, 30);
  const turnRad = rad(30);
  const flatUv = movePoints(ring, { x: 0, y: 0, turnRad: -turnRad });
  const wordsOf = (x: number, y: number, alongDeg: number, change: Partial<WorstSpot> = {}, hasUp = true) => {
    const at = movePoints([x, y], { x: 0, y: 0, turnRad: -turnRad });
    const spot = {
      ...SPOT,
      at: { x: at[0], y: at[1] },
      alongRad: (rad(alongDeg) - turnRad + Math.PI) % Math.PI,
      ...change,
    };
    const shape = { uv: ring, up: hasUp ? { x: 0, y: 1 } : null, neutral: [ring] };
    const [found] = pieceSpots(flatOf({ meshTriangles: [] } as never, flatUv, { spots: [spot] }), shape, 6000);
    return found;
  };

  it('turn with the piece', () => {
    const { at, alongRad } = wordsOf(20, 10, 60);
    expect(at.x).toBeCloseTo(20, 9);
    expect(at.y).toBeCloseTo(10, 9);
    expect(alongRad).toBeCloseTo(rad(60), 9);
  });

  it('tell the way by the up arrow', () => {
    expect(wordsOf(0, 0, 80).wayText).toBe('pull it along the up arrow');
    expect(wordsOf(0, 0, 175).wayText).toBe('pull it across the up arrow');
    expect(wordsOf(0, 0, 45).wayText).toBe('pull it aslant to the up arrow');
    expect(wordsOf(0, 0, 80, { kind: 'squash' }).wayText).toBe('gather it along the up arrow');
    expect(wordsOf(0, 0, 80, { way: 'all' }).wayText).toBe('pull it in every direction');
    expect(wordsOf(0, 0, 80, { way: 'edge', kind: 'squash' }).wayText).toBe('gather it along the edge');
    expect(wordsOf(0, 0, 80, { way: 'varied' }).wayText).toBe('pull it the way the strokes show');
  });

  it('or by its length where it lies level', () => {
    expect(wordsOf(0, 0, 5, {}, false).wayText).toBe('pull it lengthwise');
    expect(wordsOf(0, 0, 95, {}, false).wayText).toBe('pull it crosswise');
    expect(wordsOf(0, 0, 135, {}, false).wayText).toBe('pull it aslant to its length');
  });

  it('tell the place without left and right, which change with the traced side', () => {
    expect(wordsOf(5, 5, 0).placeText).toBe('in the middle');
    expect(wordsOf(40, 25, 0).placeText).toBe('near the top');
    expect(wordsOf(-40, -25, 0).placeText).toBe('near the bottom');
    expect(wordsOf(-40, 0, 0).placeText).toBe('at one side, half way up');
    expect(wordsOf(45, 0, 0, {}, false).placeText).toBe('near one end');
    expect(wordsOf(0, 25, 0, {}, false).placeText).toBe('at the middle of a long side');
    expect(wordsOf(0, 0, 0, { areaMm2: 3100 }).placeText).toBe('over more than half of it');
  });
});
