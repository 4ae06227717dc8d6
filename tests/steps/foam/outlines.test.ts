import { describe, expect, it } from 'vitest';
import { ringArea, type Ring } from '../../../src/geom/ring.ts';
import { rad } from '../../../src/geom/vec.ts';
import { cutLines } from '../../../src/steps/foam/cut-lines.ts';
import { boxMesh, meshOf, tubeMesh } from '../../support/meshes.ts';
import {
  BOX_EDGES,
  columnEdges,
  flatOf,
  foamInput,
  foamOf,
  hingeMesh,
  hingedFlat,
  partedAlong,
  turnedMesh,
} from './support.ts';

const sides = (ring: Ring): number[] =>
  Array.from({ length: ring.length / 2 }, (_, i) => {
    const j = (2 * i + 2) % ring.length;
    return Math.hypot(ring[j] - ring[2 * i], ring[j + 1] - ring[2 * i + 1]);
  });

describe('a cube', () => {
  it.each([
    { modelIs: 'face' as const, k: 0.5, face: 100, back: 80 },
    { modelIs: 'face' as const, k: 0.33, face: 100, back: 80 },
    { modelIs: 'middle' as const, k: 0.5, face: 110, back: 90 },
    { modelIs: 'back' as const, k: 1, face: 120, back: 100 },
  ])(
    'of 100 with 10 mm foam, sculpt is the $modelIs: panels of $face, backs of $back',
    ({ modelIs, k, face, back }) => {
      const parted = partedAlong(boxMesh(100), BOX_EDGES, { thicknessMm: 10, modelIs, neutralFraction: k });
      const { pieces } = foamOf(parted);
      expect(pieces).toHaveLength(6);
      for (const piece of pieces) {
        for (const side of sides(piece.outline)) expect(Math.abs(side - face)).toBeLessThan(1e-9);
        for (const side of sides(piece.otherOutline)) expect(Math.abs(side - back)).toBeLessThan(1e-9);
        expect(piece.areaMm2).toBeCloseTo(face * face, 6);
        expect(piece.surfaceAreaMm2).toBeCloseTo(ringArea(piece.neutralOutline), 6);
      }
    },
  );

  it('traced on the back has its back as the line to cut', () => {
    const parted = partedAlong(boxMesh(100), BOX_EDGES, { thicknessMm: 10 });
    const { pieces } = foamOf(parted, { tracedSide: 'back' });
    for (const side of sides(pieces[0].outline)) expect(side).toBeCloseTo(80, 9);
    for (const side of sides(pieces[0].otherOutline)) expect(side).toBeCloseTo(100, 9);
  });
});

describe('edges that are not moved', () => {
  it('are the neutral line to the last bit: a tube with open ends and a square closing seam', () => {
    const { pieces } = foamOf(partedAlong(tubeMesh(24, 40, 60), columnEdges(24, 0, 1)));
    expect(pieces).toHaveLength(1);
    expect([...pieces[0].outline]).toEqual([...pieces[0].neutralOutline]);
    expect([...pieces[0].otherOutline]).toEqual([...pieces[0].neutralOutline]);
  });

  it('stay where they are beside edges that are: open ends of an eight-sided tube keep their height', () => {
    const parted = partedAlong(tubeMesh(8, 40, 60), columnEdges(8, 0, 1), { thicknessMm: 6 });
    const { pieces } = foamOf(parted);
    const [piece] = pieces;
    expect(piece.bendStyle).toBe('grooved');
    const ys = (ring: Ring): number[] => [...ring].filter((_, i) => i % 2 === 1);
    expect(Math.max(...ys(piece.outline)) - Math.min(...ys(piece.outline))).toBeCloseTo(60, 9);
    // Both ends of the strip lean half of 45 degrees: the face is longer than the neutral line by twice 3 tan(22.5).
    const xs = (ring: Ring): number =>
      Math.max(...[...ring].filter((_, i) => i % 2 === 0)) - Math.min(...[...ring].filter((_, i) => i % 2 === 0));
    expect(xs(piece.outline) - xs(piece.neutralOutline)).toBeCloseTo(6 * Math.tan(rad(22.5)), 9);
    expect(xs(piece.otherOutline) - xs(piece.neutralOutline)).toBeCloseTo(-6 * Math.tan(rad(22.5)), 9);
  });
});

describe('allowances', () => {
  const settings = (kind: 'butt' | 'lap') => [{ edge: [0, 1] as const, kind, allowanceMm: 12, lapFace: 1 }];

  it('of a lap lie on the named side only, and nothing leans', () => {
    const { pieces, seams } = foamOf(
      partedAlong(hingeMesh(rad(60)), [[0, 1]], { thicknessMm: 6, modelIs: 'middle' }, settings('lap')),
    );
    const areas = pieces.map(({ outline }) => ringArea(outline));
    expect(areas.sort((a, b) => a - b)[0]).toBeCloseTo(6000, 6);
    expect(areas[1]).toBeCloseTo(7200, 6);
    for (const { outline, otherOutline } of pieces) expect(ringArea(otherOutline)).toBeCloseTo(ringArea(outline), 6);
    for (const piece of pieces)
      for (const { bevelDeg } of piece.edges) for (const lean of bevelDeg) expect(lean).toBe(0);
    expect(seams.find(({ letter }) => letter === 'A')).toMatchObject({ kind: 'lap', allowanceMm: 12, lapSide: 1 });
  });

  it('of a butt seam come on top of its bevel', () => {
    const { pieces } = foamOf(
      partedAlong(hingeMesh(rad(60)), [[0, 1]], { thicknessMm: 6, modelIs: 'middle' }, settings('butt')),
    );
    const [own, other] = pieces
      .map((piece) => piece.edges.find(({ letter }) => letter === 'A'))
      .sort((a, b) => (b?.allowanceMm ?? 0) - (a?.allowanceMm ?? 0));
    expect(own?.faceOffsetMm[0]).toBeCloseTo(12 + 3 * Math.tan(rad(30)), 9);
    expect(other?.faceOffsetMm[0]).toBeCloseTo(3 * Math.tan(rad(30)), 9);
  });
});

describe('holes', () => {
  it('get their own edges: a plate with a raised frame round its window', () => {
    // A square plate of 100 with a square window of 40 whose rim runs 20 down: fold of 90 degrees round the window.
    const plate = meshOf(
      [
        [0, 0, 0],
        [100, 0, 0],
        [100, 100, 0],
        [0, 100, 0],
        [30, 30, 0],
        [70, 30, 0],
        [70, 70, 0],
        [30, 70, 0],
        [30, 30, -20],
        [70, 30, -20],
        [70, 70, -20],
        [30, 70, -20],
      ],
      [
        [0, 1, 5, 4],
        [1, 2, 6, 5],
        [2, 3, 7, 6],
        [3, 0, 4, 7],
        [4, 5, 9, 8],
        [5, 6, 10, 9],
        [6, 7, 11, 10],
        [7, 4, 8, 11],
      ],
    );
    const parted = partedAlong(
      plate,
      [
        [4, 5],
        [5, 6],
        [6, 7],
        [7, 4],
        [4, 8],
      ],
      { thicknessMm: 4 },
    );
    const { pieces } = foamOf(parted);
    const [frame] = pieces;
    expect(frame.neutralHoles).toHaveLength(1);
    // The rim turns down into the window, so the fold is convex: face edges meet at the sculpt, backs stand 4 mm back all round.
    expect(ringArea(frame.holes[0])).toBeCloseTo(-1600, 6);
    expect(ringArea(frame.otherHoles[0])).toBeCloseTo(-(48 * 48), 6);
    expect(frame.areaMm2).toBeCloseTo(10000 - 1600, 6);
  });
});

describe('crossing lines', () => {
  it('are cleaned where an inward offset eats a short edge', () => {
    // A square with one corner cut off by 2 mm: moved in by 10 the short edge is gone and the long ones meet.
    const ring = Float64Array.from([0, 0, 100, 0, 100, 98, 98, 100, 0, 100]);
    const inward = { atStart: new Float64Array(5).fill(-10), atEnd: new Float64Array(5).fill(-10) };
    const lines = cutLines([ring], [inward], false);
    expect(lines.loss).toBe('none');
    expect(ringArea(lines.outline)).toBeCloseTo(6400, 0);
    expect(lines.outline.length / 2).toBe(4);
    expect([...lines.outline].slice(0, 8)).toContain(10);
  });

  it('say so when nothing is left, and when the area falls in two', () => {
    const thin = Float64Array.from([0, 0, 50, 0, 50, 8, 0, 8]);
    const inward = (count: number) => ({
      atStart: new Float64Array(count).fill(-5),
      atEnd: new Float64Array(count).fill(-5),
    });
    expect(cutLines([thin], [inward(4)], false)).toMatchObject({ loss: 'gone', outline: thin });
    const waist = Float64Array.from([0, 0, 40, 0, 50, 16, 60, 0, 100, 0, 100, 40, 60, 40, 50, 24, 40, 40, 0, 40]);
    const parted = cutLines([waist], [inward(10)], false);
    expect(parted.loss).toBe('parted');
  });

  it('leave the two sides of a cut without width apart', () => {
    // A notch between x 20 and 24 at the top is eaten when edges move out by 5; the cut from below stays a cut.
    const ring = Float64Array.from([
      0, 0, 50, 0, 50, 30, 50, 0, 100, 0, 100, 60, 24, 60, 24, 40, 20, 40, 20, 60, 0, 60,
    ]);
    const count = ring.length / 2;
    const offsets = { atStart: new Float64Array(count).fill(5), atEnd: new Float64Array(count).fill(5) };
    for (const e of [1, 2]) offsets.atStart[e] = offsets.atEnd[e] = 0;
    const lines = cutLines([ring], [offsets], false);
    expect(lines.loss).toBe('none');
    const points = Array.from(
      { length: lines.outline.length / 2 },
      (_, i) => `${lines.outline[2 * i]} ${lines.outline[2 * i + 1]}`,
    );
    expect(points).toContain('50 30');
    expect(points.filter((p) => p.startsWith('50 '))).toHaveLength(3);
  });

  it('stay in a piece that lies over itself', () => {
    const knot = Float64Array.from([0, 0, 60, 0, 60, 40, 30, 40, 30, -20, 50, -20, 50, 60, 0, 60]);
    const out = { atStart: new Float64Array(8).fill(1), atEnd: new Float64Array(8).fill(1) };
    expect(cutLines([knot], [out], true).outline).toHaveLength(16);
    expect(cutLines([knot], [out], false).outline).not.toHaveLength(16);
  });

  it('of a piece that lies over itself are a finding', () => {
    const parted = partedAlong(tubeMesh(24, 40, 60), columnEdges(24, 0, 1));
    const flat = hingedFlat(parted.patches[0], parted.layer.neutralPositions);
    const { pieces, findings } = foamOf(parted, {
      flats: [flatOf(parted.patches[0], flat.uv, { overlaps: [[0, 5]] })],
    });
    expect(pieces[0].outline.length).toBe(pieces[0].neutralOutline.length);
    expect(findings.find(({ code }) => code === 'foam/overlap')).toMatchObject({
      severity: 'error',
      where: { piece: pieces[0].id },
    });
  });
});

describe('every piece', () => {
  it('keeps its ring, runs and figures together', () => {
    const cone = turnedMesh(24, [
      [60, 0],
      [45, 30],
      [30, 60],
    ]);
    const parted = partedAlong(cone, [...columnEdges(24, 0, 2), ...columnEdges(24, 12, 2)]);
    const { pieces } = foamOf(parted);
    for (const piece of pieces) {
      expect(ringArea(piece.neutralOutline)).toBeGreaterThan(0);
      const covered = piece.edges.reduce((sum, edge) => sum + edge.stationMm.length - 1, 0);
      expect(covered).toBe(piece.neutralOutline.length / 2);
      for (const edge of piece.edges) {
        const count = edge.stationMm.length;
        expect([edge.bevelDeg.length, edge.faceOffsetMm.length, edge.backOffsetMm.length]).toEqual([
          count,
          count,
          count,
        ]);
        expect(edge.to).toBe((edge.from + count - 1) % (piece.neutralOutline.length / 2));
        expect(edge.reversed).toBe(edge.side === 1);
      }
    }
  });

  it('is left out where its patch cannot be laid flat', () => {
    const parted = partedAlong(boxMesh(100), BOX_EDGES);
    const input = foamInput(parted);
    const { pieces, seams } = foamOf(parted, {
      flats: input.flats.map((flat, i) => (i === 2 ? null : flat)),
      firstNumber: 7,
    });
    expect(pieces.map(({ number }) => number)).toEqual([7, 8, 9, 10, 11]);
    expect(pieces.map(({ patch }) => patch)).toEqual([0, 1, 3, 4, 5]);
    expect(seams.filter((seam) => seam.pieces.length === 1)).toHaveLength(4);
  });
});
