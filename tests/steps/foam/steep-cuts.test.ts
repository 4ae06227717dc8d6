import { describe, expect, it } from 'vitest';
import { deg, rad } from '../../../src/geom/vec.ts';
import type { SteepWay } from '../../../src/model/steep-join.ts';
import { makeTemplate } from '../../../src/steps/foam/make-template.ts';
import type { Plate, PlateCut } from '../../../src/steps/foam/plate-joint.ts';
import { filledCut, splitCut } from '../../../src/steps/foam/steep-cuts.ts';
import { filledGap, seamsInstead, stripBetween } from '../../../src/steps/foam/steep-offers.ts';
import { forAll } from '../../support/for-all.ts';
import { foamOf, hingeMesh, partedAlong } from './support.ts';
import { textsOf } from './template-check.ts';

interface Point {
  readonly x: number;
  readonly y: number;
}

const turn = ({ x, y }: Point, angle: number): Point => ({
  x: x * Math.cos(angle) - y * Math.sin(angle),
  y: x * Math.sin(angle) + y * Math.cos(angle),
});

const away = (p: Point, q: Point): number => Math.hypot(p.x - q.x, p.y - q.y);

/** A sheet whose face is `faceMm` over the sculpt. */
const plate = (t: number, k: number, faceMm: number): Plate => ({
  faceMm,
  neutralMm: faceMm - (1 - k) * t,
  backMm: faceMm - t,
});

/** The face and the back edge of the left plate of two in space: the seam on the sculpt at the origin, the plate level to its left. */
function edgesOf(halfFold: number, own: Plate, cut: PlateCut): readonly [face: Point, back: Point] {
  const neutral = own.neutralMm * Math.tan(halfFold);
  return [
    { x: neutral + cut.faceMm, y: own.faceMm },
    { x: neutral + cut.backMm, y: own.backMm },
  ];
}

/** The right plate is the left one's mirror image in the plane that halves the fold. */
const mirrored = (p: Point, halfFold: number): Point => {
  const { x, y } = turn(p, halfFold);
  return turn({ x: -x, y }, -halfFold);
};

const anySteep = (rand: () => number) => {
  const limit = rad(20 + 30 * rand());
  return {
    limit,
    halfFold: (limit + (rad(74) - limit) * rand()) * (rand() < 0.5 ? -1 : 1),
    own: plate(2 + 13 * rand(), rand(), 8 * rand() - 4),
  };
};

describe('edges cut no steeper than the blade leans', () => {
  it('touch on the inside of the fold and stand apart on its outside by the gap that is told', () =>
    forAll(anySteep, ({ limit, halfFold, own }) => {
      const t = own.faceMm - own.backMm;
      const cut = filledCut(halfFold, own, limit);
      expect(Math.abs(cut.bevel)).toBeCloseTo(limit, 12);
      expect(Math.tan(cut.bevel)).toBeCloseTo((cut.faceMm - cut.backMm) / t, 9);
      const [face, back] = edgesOf(halfFold, own, cut);
      const [faceGap, backGap] = [face, back].map((p) => away(p, mirrored(p, halfFold)));
      const [open, shut] = halfFold > 0 ? [faceGap, backGap] : [backGap, faceGap];
      expect(shut).toBeLessThan(1e-9);
      expect(open).toBeCloseTo(filledGap(halfFold, limit, t), 9);
    }));

  it('are cut as they fold where the blade can', () => {
    const own = plate(6, 0.5, 0);
    expect(filledCut(rad(40), own, rad(45)).bevel).toBeCloseTo(rad(40), 12);
    expect(filledCut(rad(40), own, rad(45)).faceMm).toBeCloseTo(3 * Math.tan(rad(40)), 12);
  });
});

describe('edges set back for strips', () => {
  it('leave just the room for strips of the widths that are told, on the face and on the back', () =>
    forAll(anySteep, ({ limit, halfFold, own }) => {
      const t = own.faceMm - own.backMm;
      const seams = seamsInstead(halfFold, limit);
      const cut = splitCut(halfFold, own, seams);
      expect(Math.abs(cut.bevel)).toBeLessThanOrEqual(limit + 1e-9);
      const strip = stripBetween(halfFold, seams, t);
      const [face, back] = edgesOf(halfFold, own, cut);
      // Strips laid on one after the other, each turned by its share of the fold, end on the other plate.
      const skins = [
        [face, strip.faceMm],
        [back, strip.backMm],
      ] as const;
      for (const [start, width] of skins) {
        let end = start;
        for (let j = 1; j < seams; j += 1) {
          const step = turn({ x: width, y: 0 }, (-2 * halfFold * j) / seams);
          end = { x: end.x + step.x, y: end.y + step.y };
        }
        expect(away(end, mirrored(start, halfFold))).toBeLessThan(1e-8);
      }
    }));
});

describe('a fold of 100 degrees in foam of 6 mm', () => {
  const built = (steep?: SteepWay) =>
    foamOf(
      partedAlong(hingeMesh(rad(100)), [[0, 1]], { thicknessMm: 6 }, [
        { edge: [0, 1], kind: 'butt', allowanceMm: 0, ...(steep === undefined ? {} : { steep }) },
      ]),
    );
  const seamOf = (steep?: SteepWay) => built(steep).seams.find(({ letter }) => letter === 'A');
  const codes = (steep?: SteepWay) => built(steep).findings.map(({ code }) => code);
  const words = (steep: SteepWay) => {
    const { pieces, seams } = built(steep);
    return textsOf(makeTemplate(pieces[0], seams, { projectName: 'bench', foamName: 'EVA 6 mm' })).join(' ');
  };

  it('warns until a way is chosen, then notes what the way asks for', () => {
    expect(codes()).toContain('foam/bevel-steep');
    expect(seamOf()?.steep).toBeUndefined();
    for (const way of ['split', 'fill', 'trim'] as const) {
      expect(codes(way)).not.toContain('foam/bevel-steep');
      expect(codes(way)).toContain('foam/steep-built');
    }
    const noteOf = (way: SteepWay) => built(way).findings.find(({ code }) => code === 'foam/steep-built')?.text;
    expect(noteOf('split')).toBe(
      'Seam A: a strip of 6 mm foam, 11.6 mm wide on the face and 6 mm on the back, 100 mm long, long edges at 25°: ' +
        'its fold is beyond the blade, and this is how you chose to build it.',
    );
    expect(noteOf('fill')).toContain('Seam A: fill the gap, 1.5 mm wide at the face, 100 mm long');
    expect(noteOf('trim')).toContain('a thin trim strip 13.5 mm wide over the gap, 1.5 mm wide at the face');
  });

  it('sets the saw at 25 degrees for strips and at 45 for a gap to fill: nothing is left to the hand', () => {
    const sawOf = (steep?: SteepWay) => built(steep).pieces[0].saw;
    expect(sawOf()?.byHand).toHaveLength(1);
    const leans = (steep: SteepWay) => sawOf(steep)?.settings.map(({ bevelDeg }) => Math.round(bevelDeg * 1e6) / 1e6);
    expect(leans('split')).toEqual([0, 25]);
    expect(leans('fill')).toEqual([0, 45]);
    expect(leans('trim')).toEqual([0, 45]);
    for (const way of ['split', 'fill', 'trim'] as const) expect(sawOf(way)?.byHand).toEqual([]);
  });

  it('stands on the templates and in the seam', () => {
    expect(words('split')).toContain('bevel 25° in under · strip between');
    expect(words('fill')).toContain('bevel 45° in under · fill 1.5 mm at the face');
    expect(words('trim')).toContain('bevel 45° in under · trim over 1.5 mm at the face');
    const split = seamOf('split')?.steep;
    expect(split?.way === 'split' && split.bevelDeg).toBeCloseTo(25, 9);
    expect(split?.way === 'split' && split.faceMm.max).toBeCloseTo(11.595692, 6);
  });

  it('is cut where the strip ends: the face edge stands half a strip over the cosine of half the fold back', () => {
    const [edge] = built('split').pieces[0].edges.filter(({ letter }) => letter === 'A');
    // On the face both panels meet at the sculpt's own edge, 3 tan 50 outside the neutral line.
    const face = 3 * Math.tan(rad(50)) - 11.595692 / (2 * Math.cos(rad(50)));
    expect(edge.faceOffsetMm[0]).toBeCloseTo(face, 6);
    expect(edge.faceOffsetMm[0] - edge.backOffsetMm[0]).toBeCloseTo(6 * Math.tan(rad(25)), 9);
    expect(deg(rad(edge.bevelDeg[0]))).toBeCloseTo(25, 9);
  });

  it('needs no way where the fold is within the blade', () => {
    const { seams, findings } = foamOf(
      partedAlong(hingeMesh(rad(80)), [[0, 1]], { thicknessMm: 6 }, [
        { edge: [0, 1], kind: 'butt', allowanceMm: 0, steep: 'split' },
      ]),
    );
    expect(seams[0].steep).toBeUndefined();
    expect(seams[0].bevelDeg.max).toBeCloseTo(40, 9);
    expect(findings.map(({ code }) => code)).not.toContain('foam/steep-built');
  });
});
