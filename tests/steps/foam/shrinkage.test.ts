import { describe, expect, it } from 'vitest';
import { boxOfPoints, ringArea } from '../../../src/geom/ring.ts';
import { scaleAlong, scaledNormal, scaledPoint, scaledPoints } from '../../../src/geom/scale-along.ts';
import { rad } from '../../../src/geom/vec.ts';
import { cutScaleOf } from '../../../src/model/cut-larger.ts';
import type { GrainWish, HeatShrinkage } from '../../../src/model/flatten-settings.ts';
import type { FoamPiece } from '../../../src/model/foam-piece.ts';
import type { Stroke, Template } from '../../../src/model/template.ts';
import type { FoamInput } from '../../../src/steps/foam/make-foam-pieces.ts';
import { makeTemplate } from '../../../src/steps/foam/make-template.ts';
import { forAll } from '../../support/for-all.ts';
import { boxMesh } from '../../support/meshes.ts';
import { BOX_EDGES, columnEdges, foamOf, hingeMesh, partedAlong, turnedMesh, type Parted } from './support.ts';
import { collisionsOf, textsOf } from './template-check.ts';

const CONTEXT = { projectName: 'Lamplighter lantern', foamName: 'EVA 10 mm, 1000 × 2000' };
const EVEN: HeatShrinkage = { alongPct: 2, acrossPct: 2 };
const UNEVEN: HeatShrinkage = { alongPct: 3, acrossPct: 1 };

const HINGE = partedAlong(hingeMesh(rad(50)), []);
const CONE = partedAlong(
  turnedMesh(24, [
    [60, 0],
    [45, 40],
    [30, 80],
  ]),
  [...columnEdges(24, 0, 2), ...columnEdges(24, 12, 2)],
);

function made(parted: Parted, change: Partial<FoamInput> = {}) {
  const { pieces, seams } = foamOf(parted, change);
  const mates = new Map(pieces.map(({ id, number }) => [id, number]));
  return { pieces, seams, templates: pieces.map((piece) => makeTemplate(piece, seams, { ...CONTEXT, mates })) };
}

/** A wish for the grain of every piece. */
const grainOfAll = (parted: Parted, grain: GrainWish) =>
  parted.patches.map((patch) => ({ face: parted.mesh.faceOfTriangle[patch.meshTriangles[0]], grain }));

const cutOf = ({ drawing }: Template): Float64Array => strokesOf(drawing.strokes, 'cut')[0];
const strokesOf = (strokes: readonly Stroke[], role: Stroke['role']): Float64Array[] =>
  strokes.filter((stroke) => stroke.role === role).map(({ points }) => points);

/** Undoes a shrinkage the long way: turns the grain to x, shrinks each axis, turns back. */
function warmed(points: Float64Array, grainRad: number, { alongPct, acrossPct }: HeatShrinkage): number[] {
  const [c, s] = [Math.cos(grainRad), Math.sin(grainRad)];
  const found: number[] = [];
  for (let i = 0; i < points.length; i += 2) {
    const along = (c * points[i] + s * points[i + 1]) * (1 - alongPct / 100);
    const across = (c * points[i + 1] - s * points[i]) * (1 - acrossPct / 100);
    found.push(c * along - s * across, s * along + c * across);
  }
  return found;
}

const farthest = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
  expect(a.length).toBe(b.length);
  return Array.from(a).reduce((most, x, i) => Math.max(most, Math.abs(x - b[i])), 0);
};

describe('a foam that shrinks alike both ways', () => {
  it.each(['face', 'back'] as const)('is cut 1 / 0.98 times as large, traced on the %s', (tracedSide) => {
    for (const parted of [HINGE, CONE]) {
      const [plain, larger] = [made(parted, { tracedSide }), made(parted, { tracedSide, shrinkage: EVEN })];
      plain.templates.forEach((template, i) => {
        const [finished, cut] = [cutOf(template), cutOf(larger.templates[i])];
        expect(
          farthest(
            cut,
            finished.map((x) => x / 0.98),
          ),
        ).toBeLessThan(1e-9);
        expect(ringArea(cut) / ringArea(finished)).toBeCloseTo(1 / 0.98 ** 2, 9);
        for (const role of ['bevel', 'fold-out', 'fold-in', 'groove'] as const) {
          const [before, after] = [template, larger.templates[i]].map(({ drawing }) =>
            strokesOf(drawing.strokes, role),
          );
          expect(after).toHaveLength(before.length);
          after.forEach((points, k) =>
            expect(
              farthest(
                points,
                before[k].map((x) => x / 0.98),
              ),
            ).toBeLessThan(1e-9),
          );
        }
      });
    }
  });

  it('has the finished piece, its seams and its findings as they were', () => {
    const [plain, larger] = [foamOf(CONE), foamOf(CONE, { shrinkage: EVEN })];
    expect(larger.seams).toEqual(plain.seams);
    expect(larger.findings).toEqual(plain.findings);
    larger.pieces.forEach(({ shrinkage, revision, ...piece }, i) => {
      const { revision: before, ...finished } = plain.pieces[i];
      expect(piece).toEqual(finished);
      expect(shrinkage).toEqual(EVEN);
      expect(revision).not.toBe(before);
    });
  });

  it('says so, and needs no grain', () => {
    const [template] = made(HINGE, { shrinkage: EVEN }).templates;
    expect(textsOf(template).join(' ')).toContain('drawn 2 % larger');
    expect(textsOf(template).join(' ')).toContain('comes to size when warmed');
    expect(textsOf(template)).not.toContain('grain');
    expect(template).not.toHaveProperty('grainRad');
  });

  it('keeps ticks and words as they are: only lines grow', () => {
    const [plain, larger] = [made(CONE), made(CONE, { shrinkage: { alongPct: 15, acrossPct: 15 } })];
    const tick = (template: Template): number => {
      const [x0, y0, x1, y1] = strokesOf(template.drawing.strokes, 'mark')[0];
      return Math.hypot(x1 - x0, y1 - y0);
    };
    expect(tick(larger.templates[0])).toBeCloseTo(tick(plain.templates[0]), 12);
  });

  it('is nothing where nothing is lost', () => {
    expect(foamOf(HINGE, { shrinkage: { alongPct: 0, acrossPct: 0 } })).toEqual(foamOf(HINGE));
  });
});

describe('a foam that shrinks more one way than the other', () => {
  it.each(['face', 'back'] as const)(
    'comes back to the finished outline, grain at 30 degrees, traced on the %s',
    (tracedSide) => {
      for (const parted of [HINGE, CONE]) {
        const pieceSettings = grainOfAll(parted, { angleDeg: 30, stretch: 'any' });
        const plain = made(parted, { tracedSide });
        const larger = made(parted, { tracedSide, shrinkage: UNEVEN, pieceSettings });
        larger.templates.forEach((template, i) => {
          const { up, grainRad } = larger.pieces[i];
          const from = up === null ? 0 : Math.atan2(up.y, up.x);
          expect(grainRad).toBeCloseTo(from + Math.PI / 6, 12);
          const onPaper = tracedSide === 'back' ? Math.PI - (grainRad ?? 0) : (grainRad ?? 0);
          expect(Math.abs(Math.sin((template.grainRad ?? 0) - onPaper))).toBeLessThan(1e-12);
          const back = warmed(cutOf(template), onPaper, UNEVEN);
          expect(farthest(back, cutOf(plain.templates[i]))).toBeLessThan(1e-9);
        });
        expect(larger.seams).toEqual(plain.seams);
      }
    },
  );

  it('lies along the up arrow where nobody wished otherwise, and along the long side where there is none', () => {
    const lying = foamOf(partedAlong(boxMesh(100, 60, 25), BOX_EDGES), { shrinkage: UNEVEN }).pieces;
    expect(lying.some(({ up }) => up === null)).toBe(true);
    for (const { up, grainRad } of lying) expect(grainRad).toBe(up === null ? 0 : Math.PI / 2);
  });

  it('is told on the piece, with a grain arrow', () => {
    for (const [shrinkage, text] of [
      [UNEVEN, 'drawn 3.1 % longer along the grain, 1 % wider across'],
      [{ alongPct: 2, acrossPct: -1 }, 'drawn 2 % longer along the grain, 1 % narrower across'],
      [{ alongPct: 2, acrossPct: 0 }, 'drawn 2 % longer along the grain'],
      [{ alongPct: 0, acrossPct: 2 }, 'drawn 2 % wider across the grain'],
    ] as const) {
      const [template] = made(CONE, { shrinkage }).templates;
      expect(textsOf(template).join(' ')).toContain(text);
      expect(textsOf(template)).toContain('grain');
    }
  });
});

describe('a wish for the grain', () => {
  it('draws an arrow of two heads along it and changes nothing else that is cut', () => {
    const pieceSettings = grainOfAll(HINGE, { angleDeg: -70, stretch: 'across' });
    const [plain, grained] = [made(HINGE), made(HINGE, { pieceSettings })];
    const [template] = grained.templates;
    expect(cutOf(template)).toEqual(cutOf(plain.templates[0]));
    expect(textsOf(template)).toContain('grain');
    const heads = template.drawing.strokes.filter(({ role, filled }) => role === 'mark' && filled === true);
    const upHeads = grained.pieces[0].up === null ? 0 : 1;
    expect(heads).toHaveLength(2 + upHeads);
    const [one, other] = heads.slice(upHeads).map(({ points }) => points);
    const angle = Math.atan2(one[1] - other[1], one[0] - other[0]);
    expect(Math.abs(Math.sin(angle - (template.grainRad ?? NaN)))).toBeLessThan(1e-9);
    expect(grained.pieces[0].revision).not.toBe(plain.pieces[0].revision);
  });

  it('leaves twins twins only where it is mirrored too', () => {
    const parted = partedAlong(boxMesh(100, 60, 25), BOX_EDGES);
    const twins = foamOf(parted).pieces;
    const pair = twins.filter(({ hand }) => hand !== undefined);
    expect(pair).toHaveLength(2);
    const faceOf = ({ patch }: FoamPiece): number => parted.mesh.faceOfTriangle[parted.patches[patch].meshTriangles[0]];
    const handsWith = (angles: readonly (number | null)[]): number =>
      foamOf(parted, {
        pieceSettings: pair.flatMap((piece, i) => {
          const angleDeg = angles[i];
          return angleDeg === null ? [] : [{ face: faceOf(piece), grain: { angleDeg, stretch: 'any' as const } }];
        }),
      }).pieces.filter(({ hand }) => hand !== undefined).length;
    expect(handsWith([20, -20])).toBe(2);
    expect(handsWith([20, 160])).toBe(2);
    expect(handsWith([20, 20])).toBe(0);
    expect(handsWith([20, null])).toBe(0);
  });
});

describe.each([
  { name: 'a hinge', parted: HINGE },
  { name: 'a cone in two', parted: CONE },
  { name: 'a box', parted: partedAlong(boxMesh(100, 60, 25), BOX_EDGES, { thicknessMm: 6 }) },
  { name: 'a tiny box', parted: partedAlong(boxMesh(22, 16, 9), BOX_EDGES, { thicknessMm: 2 }) },
])('templates of $name with shrinkage and grain', ({ parted }) => {
  const templates = (['face', 'back'] as const).flatMap((tracedSide) =>
    [0, 25, 90, -60].flatMap(
      (angleDeg) =>
        made(parted, {
          tracedSide,
          shrinkage: { alongPct: 4, acrossPct: 1.5 },
          pieceSettings: grainOfAll(parted, { angleDeg, stretch: 'across' }),
        }).templates,
    ),
  );

  it('have no words on words, lines, marks or the line to cut', () => {
    expect(templates.flatMap(collisionsOf)).toEqual([]);
  });

  it('have all of it in the box, and every cut in the box of the foam', () => {
    for (const { drawing, box, foamBox } of templates) {
      for (const { points, role } of drawing.strokes) {
        const own = boxOfPoints(points);
        const round = role === 'cut' || role === 'bevel' ? foamBox : box;
        expect(own.minX).toBeGreaterThanOrEqual(round.minX - 1e-9);
        expect(own.maxY).toBeLessThanOrEqual(round.maxY + 1e-9);
      }
      expect(drawing.words.filter(({ text }) => text === 'grain')).toHaveLength(1);
    }
  });
});

describe('scaling along a direction', () => {
  it('stretches along and across by its factors, and keeps what is square on a line square', () =>
    forAll(
      (rand) => ({ angle: 7 * rand() - 3, along: 0.8 + 0.5 * rand(), across: 0.8 + 0.5 * rand(), way: 6 * rand() }),
      ({ angle, along, across, way }) => {
        const scale = scaleAlong(angle, along, across);
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        const p = scaledPoint({ x: c, y: s }, scale);
        expect(Math.hypot(p.x - along * c, p.y - along * s)).toBeLessThan(1e-12);
        const q = scaledPoint({ x: -s, y: c }, scale);
        expect(Math.hypot(q.x + across * s, q.y - across * c)).toBeLessThan(1e-12);
        const line = scaledPoints([Math.cos(way), Math.sin(way)], scale);
        const normal = scaledNormal({ x: Math.sin(way), y: -Math.cos(way) }, scale);
        expect(Math.abs(line[0] * normal.x + line[1] * normal.y)).toBeLessThan(1e-12);
        expect(line[0] * normal.y - line[1] * normal.x).toBeLessThan(0);
      },
    ));

  it('refuses a factor of nothing: our mistake', () => {
    expect(() => scaleAlong(0, 0, 1)).toThrow(RangeError);
    expect(cutScaleOf({})).toBeNull();
  });
});
