import { describe, expect, it } from 'vitest';
import { SEAM_DIFFERENCE_MM } from '../../../src/base/tolerance.ts';
import { rad } from '../../../src/geom/vec.ts';
import type { FoamPiece, MatchMark } from '../../../src/model/foam-piece.ts';
import { FOAM_RULES } from '../../../src/model/foam-settings.ts';
import { markStations } from '../../../src/steps/foam/match-marks.ts';
import { placeAt, stationAt, walkSeam, type ChainPlace, type MarkPlace } from '../../../src/steps/foam/seam-walk.ts';
import { boxMesh, tubeMesh } from '../../support/meshes.ts';
import {
  BOX_EDGES,
  columnEdges,
  flatOf,
  foamInput,
  foamOf,
  hingeMesh,
  partedAlong,
  ringEdges,
  turnedMesh,
  type Parted,
} from './support.ts';

const steps = (stations: readonly number[]): number[] => stations.slice(1).map((s, i) => s - stations[i]);

describe('match marks', () => {
  it('stand at most 80 mm apart, end included, in stretches that all differ and never read the same backwards', () => {
    for (let length = 25; length < 2000; length += 13.7) {
      const marks = markStations(length, false, FOAM_RULES);
      expect(marks.length).toBeGreaterThanOrEqual(1);
      const gaps = steps([0, ...marks, length]);
      expect(Math.max(...gaps)).toBeLessThanOrEqual(80 + 1e-9);
      expect(gaps[gaps.length - 1] / gaps[0]).toBeCloseTo(1.5, 9);
      expect(new Set(gaps.map((gap) => gap.toFixed(6))).size).toBe(gaps.length);
    }
  });

  it('are not asked of a seam shorter than 25 mm', () => {
    expect(markStations(24.9, false, FOAM_RULES)).toEqual([]);
    expect(markStations(25, false, FOAM_RULES)).toHaveLength(1);
  });

  it('are as many as the longest of seams that mirror each other needs', () => {
    // 200 mm in three stretches end with one of 80 mm; a hair more takes four.
    expect(markStations(200, false, FOAM_RULES)).toHaveLength(2);
    expect(markStations(200, false, FOAM_RULES, 200.0001)).toEqual(
      markStations(200.0001, false, FOAM_RULES).map((s): unknown => expect.closeTo(s, 3)),
    );
    expect(markStations(24.9, false, FOAM_RULES, 25)).toHaveLength(1);
  });

  it('begin at the start of a closed seam and go round it unevenly', () => {
    const marks = markStations(300, true, FOAM_RULES);
    expect(marks[0]).toBe(0);
    const gaps = steps([...marks, 300]);
    expect(Math.max(...gaps)).toBeLessThanOrEqual(80);
    expect(new Set(gaps.map((gap) => gap.toFixed(6))).size).toBe(gaps.length);
    expect(markStations(10, true, FOAM_RULES)).toEqual([0]);
  });

  it('come in pairs at the same model point, on the line to cut, pointing out', () => {
    const parted = partedAlong(boxMesh(200), BOX_EDGES);
    const { pieces, seams } = foamOf(parted);
    for (const seam of seams) {
      const sides = [0, 1].map((side) => marksOf(pieces, seam.id, side));
      const numbers = sides[0].map(({ index }) => index);
      // A face of the box mirrors the one across from it, and so do their seams: one of two may be counted from its end.
      expect([...numbers].sort()).toEqual([1, 2]);
      expect(sides[1].map(({ index }) => index)).toEqual(numbers);
      for (let i = 0; i < 2; i += 1) {
        expect(sides[0][i].letter).toBe(sides[1][i].letter);
        expect(sides[0][i].stationMm).toBeCloseTo(sides[1][i].stationMm, 9);
      }
    }
    for (const piece of pieces) {
      for (const { at, outward } of piece.marks) {
        // On the border of the 200 x 200 panel, pointing away from its middle.
        const middle = centreOf(piece);
        expect(Math.max(Math.abs(at.x - middle.x), Math.abs(at.y - middle.y))).toBeCloseTo(100, 6);
        expect(outward.x * (at.x - middle.x) + outward.y * (at.y - middle.y)).toBeCloseTo(100, 6);
        expect(Math.hypot(outward.x, outward.y)).toBeCloseTo(1, 12);
      }
    }
  });

  it('stand as far from the seam’s start as they say, on both sides', () => {
    const box = partedAlong(boxMesh(300, 200, 120), BOX_EDGES);
    expect(countStations(box)).toBe(56);
    // Rings at uneven heights: the seam's edges are 10, 40 and 70 long.
    const tube = turnedMesh(24, [
      [40, 0],
      [40, 10],
      [40, 50],
      [40, 120],
    ]);
    expect(countStations(partedAlong(tube, columnEdges(24, 0, 3)))).toBe(2);
  });

  /** Checks every mark's station against its place in the flat piece; the seams are straight. Returns how many there were. */
  function countStations(parted: Parted): number {
    const { pieces } = foamOf(parted);
    let seen = 0;
    for (const chain of parted.chains) {
      chain.sides.forEach((side, which) => {
        const piece = pieces[side.patch];
        const edge = piece.edges.find(({ seam, side: own }) => seam === chain.id && own === which);
        const start = side.localVertices[0];
        for (const mark of piece.marks.filter(({ seam, side: own }) => seam === chain.id && own === which)) {
          const offset = edge?.faceOffsetMm[0] ?? 0;
          const [x, y] = [mark.at.x - offset * mark.outward.x, mark.at.y - offset * mark.outward.y];
          expect(Math.hypot(x - piece.uv[2 * start], y - piece.uv[2 * start + 1])).toBeCloseTo(mark.stationMm, 6);
          seen += 1;
        }
      });
    }
    return seen;
  }

  it('pair a closing seam with itself', () => {
    const { pieces, seams } = foamOf(partedAlong(tubeMesh(24, 40, 120, 4), columnEdges(24, 0, 4)));
    const closing = seams.find(({ letter }) => letter === 'A');
    expect(closing?.pieces).toEqual([pieces[0].id, pieces[0].id]);
    expect(marksOf(pieces, closing?.id ?? '', 0)).toHaveLength(marksOf(pieces, closing?.id ?? '', 1).length);
    expect(
      pieces[0].edges
        .filter(({ letter }) => letter === 'A')
        .map(({ side }) => side)
        .sort(),
    ).toEqual([0, 1]);
  });
});

describe('walking a seam', () => {
  const bothAt = ({ edge, share }: ChainPlace): MarkPlace => ({ edge, shares: [share, share] });

  it('finds places by length and lengths by place', () => {
    const stations = Float64Array.from([0, 10, 10, 25]);
    expect(placeAt(stations, 5)).toEqual({ edge: 0, share: 0.5 });
    expect(stationAt(stations, placeAt(stations, 17.5))).toBeCloseTo(17.5, 12);
    expect(stationAt(stations, placeAt(stations, 99))).toBe(25);
    expect(stationAt(stations, placeAt(stations, -1))).toBe(0);
  });

  it('compares lengths at common points, from the start and from the last mark', () => {
    // One side is 1 mm longer in the first third and 1 mm shorter in the second.
    const own = Float64Array.from([0, 30, 60, 90]);
    const a = { flat: Float64Array.from([0, 31, 60, 90]), own };
    const b = { flat: own, own };
    expect(walkSeam([a, b], [])).toMatchObject({ differenceMm: 0, worstMisalignmentMm: 1, worstSlipMm: 1, worstAt: 1 });
    // Lined up again at a mark in the middle of the first third, half of it is left on each side of the mark.
    expect(walkSeam([a, b], [{ edge: 0, shares: [0.5, 0.5] }])).toMatchObject({
      worstMisalignmentMm: 1,
      worstSlipMm: 0.5,
    });
    // Sides that part evenly slip less the more marks there are.
    const long = Float64Array.from([0, 100, 200, 300, 400]);
    const longer = long.map((s) => s * 1.01);
    const sides = [long, longer].map((flat) => ({ flat, own: long }));
    expect(walkSeam(sides, []).worstSlipMm).toBeCloseTo(4, 9);
    const marks = [100, 200, 300].map((s) => bothAt(placeAt(long, s)));
    expect(walkSeam(sides, marks).worstSlipMm).toBeCloseTo(1, 9);
    expect(walkSeam(sides, marks).worstMisalignmentMm).toBeCloseTo(4, 9);
    // A side that is rightly longer, on a surface of its own, meets the other where it is flat without stretch.
    const apart = [long, longer].map((flat) => ({ flat, own: flat }));
    expect(walkSeam(apart, marks)).toMatchObject({ lengthMm: [400, 404], differenceMm: 0, worstSlipMm: 0 });
  });

  it('measures neutral, traced and true lengths of a box edge', () => {
    const { seams } = foamOf(partedAlong(boxMesh(100), BOX_EDGES, { thicknessMm: 10, neutralFraction: 0.5 }));
    expect(seams).toHaveLength(12);
    for (const seam of seams) {
      // Neutral surface 5 mm in: 90. Traced on the face: 100.
      for (const length of seam.lengthMm) expect(length).toBeCloseTo(90, 9);
      for (const length of seam.tracedLengthMm) expect(length).toBeCloseTo(100, 9);
      expect(seam.trueLengthMm).toBeCloseTo(90, 9);
      expect(seam).toMatchObject({ kind: 'butt', allowanceMm: 0 });
      expect(seam.differenceMm).toBeLessThan(1e-9);
      expect(seam.bevelDeg.min).toBeCloseTo(45, 9);
    }
  });

  it('tells of sides that do not match, and of slip between marks', () => {
    const parted = partedAlong(hingeMesh(0, 60, 200), [[0, 1]]);
    const input = foamInput(parted);
    // The second panel laid flat 3 % too long: 6 mm over 200, about 2 mm between marks.
    const flats = input.flats.map((flat, i) =>
      i === 0 || flat === null
        ? flat
        : flatOf(
            parted.patches[i],
            flat.uv.map((x) => x * 1.03),
          ),
    );
    const { seams, findings } = foamOf(parted, { flats });
    const seam = seams.find(({ letter }) => letter === 'A');
    expect(seam?.differenceMm).toBeCloseTo(6, 6);
    expect(seam?.worstMisalignmentMm).toBeCloseTo(6, 6);
    expect(seam?.worstSlipMm).toBeGreaterThan(1.5);
    expect(seam?.worstSlipMm).toBeLessThan(2.5);
    expect(findings.map(({ code }) => code)).toEqual(['foam/seam-difference', 'foam/seam-slip']);
    expect(findings[0]).toMatchObject({
      limit: Math.max(SEAM_DIFFERENCE_MM, 0.0025 * 206),
      unit: 'mm',
      where: { seam: seam?.id },
    });
  });

  it('says nothing about sides within the limits', () => {
    const cone = turnedMesh(24, [
      [60, 0],
      [30, 60],
    ]);
    expect(
      foamOf(partedAlong(cone, columnEdges(24, 0, 1)), {
        limits: { noticePct: 3, tooMuchPct: 8 },
        bendLimits: { noticePct: 15, tooMuchPct: 25 },
      }).findings,
    ).toEqual([]);
  });
});

describe('bevels beyond the limit', () => {
  it('are a finding with their edges, and the line is still drawn', () => {
    const { findings, pieces } = foamOf(partedAlong(hingeMesh(rad(130)), [[0, 1]], { thicknessMm: 6 }));
    const [finding] = findings.filter(({ code }) => code === 'foam/bevel-steep');
    expect(finding).toMatchObject({ severity: 'warning', limit: 45, unit: 'deg', where: { edges: [[0, 1]] } });
    expect(finding.value).toBeCloseTo(65, 9);
    expect(finding.where.point).toEqual([0, 50, 0]);
    expect(pieces[0].edges.find(({ letter }) => letter === 'A')?.faceOffsetMm[0]).toBeCloseTo(3 * Math.tan(rad(65)), 9);
  });

  it('are not claimed for a right angle', () => {
    expect(
      foamOf(partedAlong(boxMesh(100), BOX_EDGES)).findings.filter(({ code }) => code === 'foam/bevel-steep'),
    ).toEqual([]);
  });

  it('never carry an edge off the sheet', () => {
    const { pieces } = foamOf(partedAlong(hingeMesh(rad(178)), [[0, 1]], { thicknessMm: 6 }));
    const edge = pieces[0].edges.find(({ letter }) => letter === 'A');
    expect(edge?.bevelDeg[0]).toBeCloseTo(89, 6);
    expect(edge?.faceOffsetMm[0]).toBeCloseTo(3 * Math.tan(rad(75)), 6);
  });
});

describe('seams that go all round', () => {
  it('take the whole ring of both pieces', () => {
    const parted = partedAlong(tubeMesh(24, 40, 90, 3), [
      ...ringEdges(24, 1),
      ...columnEdges(24, 0, 1),
      [24, 48],
      [48, 72],
    ]);
    const { seams } = foamOf(parted);
    expect(seams.filter(({ kind }) => kind === 'butt').every(({ differenceMm }) => differenceMm < 1e-9)).toBe(true);
  });
});

function marksOf(pieces: readonly FoamPiece[], seam: string, side: number): MatchMark[] {
  return pieces.flatMap(({ marks }) => marks).filter((mark) => mark.seam === seam && mark.side === side);
}

function centreOf(piece: FoamPiece): { x: number; y: number } {
  const xs = [...piece.outline].filter((_, i) => i % 2 === 0);
  const ys = [...piece.outline].filter((_, i) => i % 2 === 1);
  return { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
}
