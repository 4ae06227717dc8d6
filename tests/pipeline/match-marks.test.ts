import { describe, expect, it } from 'vitest';
import { dot3, length3, sub3, type Vec3 } from '../../src/geom/vec.ts';
import type { MatchMark } from '../../src/model/foam-piece.ts';
import { foamId } from '../../src/base/ids.ts';
import { bentSeam } from '../../src/pipeline/dry-fit.ts';
import type { LayerOutcome, Outcome } from '../../src/pipeline/outcome.ts';
import type { SculptPart } from '../../src/project/project.ts';
import { offsetAt } from '../../src/steps/dryfit/cut-edge.ts';
import { joinedSeams } from '../../src/steps/dryfit/dry-fit.ts';
import { heightOf, placed, type BentSide } from '../../src/steps/dryfit/placed-edge.ts';
import type { Solid } from '../reference/handbook/polygon-solids.ts';
import { outcomeOf } from '../support/run-solid.ts';

/** A cube of 100 mm: corners 0 to 3 below, 4 to 7 above them; faces 0 to 3 stand round it, 4 is below and 5 above. Every edge is a seam. */
const CUBE: Solid = {
  corners: [0, 100].flatMap((z): [number, number, number][] => [
    [0, 0, z],
    [100, 0, z],
    [100, 100, z],
    [0, 100, z],
  ]),
  faces: [...[0, 1, 2, 3].map((i) => [i, (i + 1) % 4, 4 + ((i + 1) % 4), 4 + i]), [3, 2, 1, 0], [4, 5, 6, 7]],
  seams: [0, 1, 2, 3].flatMap((i): [number, number][] => [
    [i, 4 + i],
    [i, (i + 1) % 4],
    [4 + i, 4 + ((i + 1) % 4)],
  ]),
};

/** The cube with some of its standing faces joined: at corners of these numbers they fold instead of being parted. */
const joined = (...folds: readonly number[]): Solid => ({
  ...CUBE,
  seams: CUBE.seams.filter(([a, b]) => !folds.some((i) => a === i && b === 4 + i)),
});

const of = (face: number, foam: string) => ({ face, foam: foamId(foam) });

/** Lengths along a seam nearer than this are one, mm. */
const SAME_MM = 1e-9;

/**
 * Where a mark of a side may come to lie on the face of the prop, and the way of the seam there. A mark at a corner of the seam ends one edge or
 * begins the next, which its length along the seam does not tell: at a fold between panels these are two places.
 */
function marksInSpace(bent: BentSide, mark: MatchMark): readonly { at: Vec3; along: Vec3 }[] {
  const { edge } = bent.side;
  const whole = edge.stationMm[edge.stationMm.length - 1];
  const stations = edge.reversed ? [...edge.stationMm].reverse().map((s) => whole - s) : [...edge.stationMm];
  return stations.slice(1).flatMap((end, i) => {
    const f = (mark.stationMm - stations[i]) / (end - stations[i]);
    if (mark.stationMm < stations[i] - SAME_MM || mark.stationMm > end + SAME_MM) return [];
    const place = { f, out: offsetAt(bent.cuts.face[i], f) };
    return [{ at: placed(bent, i, place, heightOf(bent, 'face')).at, along: bent.edges[i].along }];
  });
}

/** How far marks of one number are apart when their pieces are put together: along the seam, and in all, mm. */
function apart(outcome: Outcome): { count: number; along: number; inAll: number } {
  const [layer]: readonly (LayerOutcome | undefined)[] = outcome.layers;
  const { cut, bends, hinges, pieces, seams } = layer ?? {};
  if (!cut || !bends || !hinges || !pieces || !seams) throw new Error('not finished');
  const worst = { count: 0, along: 0, inAll: 0 };
  for (const seam of joinedSeams(pieces, seams)) {
    const [a, b] = bentSeam({ cut, bends, hinges, tooMuchPct: 8 }, seam);
    const marksOf = ({ side: { piece, edge } }: BentSide): readonly MatchMark[] =>
      piece.marks.filter((mark) => mark.seam === edge.seam && mark.side === edge.side);
    for (const mark of marksOf(a)) {
      const mate = marksOf(b).find(({ index }) => index === mark.index);
      if (mate === undefined) throw new Error(`mark ${mark.letter}${mark.index} alone`);
      const [{ between, along }] = marksInSpace(a, mark)
        .flatMap((one) => marksInSpace(b, mate).map(({ at }) => ({ between: sub3(one.at, at), along: one.along })))
        .sort((p, q) => length3(p.between) - length3(q.between));
      worst.count += 1;
      worst.along = Math.max(worst.along, Math.abs(dot3(between, along)));
      worst.inAll = Math.max(worst.inAll, length3(between));
    }
  }
  return worst;
}

describe('match marks of finished pieces', () => {
  it.each<{ name: string; solid: Solid; change: Partial<SculptPart> }>([
    { name: 'of one foam', solid: CUBE, change: {} },
    {
      name: 'of two thicknesses',
      solid: CUBE,
      change: { pieceSettings: [of(5, 'eva-15'), of(0, 'eva-2'), of(1, 'eva-10')] },
    },
    { name: 'grooved against rolled', solid: joined(1, 2), change: { pieceSettings: [of(5, 'eva-6')] } },
    { name: 'grooved against rolled, the sculpt the back', solid: joined(1), change: { modelIs: 'back' } },
    {
      name: 'grooved against thicker rolled',
      solid: joined(1, 2),
      change: { pieceSettings: [of(4, 'eva-15'), of(5, 'eva-10')] },
    },
  ])('meet on a cube $name', async ({ solid, change }) => {
    const outcome = await outcomeOf(solid, (part) => ({ ...part, ...change }));
    expect(outcome.stopped).toBeNull();
    const { count, along, inAll } = apart(outcome);
    expect(count).toBeGreaterThanOrEqual(8);
    expect(along).toBeLessThan(1e-9);
    expect(inAll).toBeLessThan(1e-6);
  });

  // The face of the foam is the cube, so every face outline is 100 mm long, whatever the foam: marks of a pair are as far from its corners.
  it('stand as far from the corners of both outlines, whatever the foam', async () => {
    const outcome = await outcomeOf(CUBE, (part) => ({ ...part, pieceSettings: [of(5, 'eva-15'), of(0, 'eva-2')] }));
    const fromCorner = new Map<string, number[]>();
    for (const { marks, outline } of outcome.pieces ?? []) {
      expect(outline.length).toBe(8);
      for (const { letter, index, at } of marks) {
        const away = [0, 1, 2, 3].map((i) => Math.hypot(outline[2 * i] - at.x, outline[2 * i + 1] - at.y));
        const name = `${letter}${index}`;
        fromCorner.set(name, [...(fromCorner.get(name) ?? []), Math.min(...away)]);
      }
    }
    expect(fromCorner.size).toBe(12);
    for (const [name, [one, other]] of fromCorner) expect(one, name).toBeCloseTo(other, 9);
  });
});
