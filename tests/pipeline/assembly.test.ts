import { describe, expect, it } from 'vitest';
import { foamId, partId } from '../../src/base/ids.ts';
import { composed4, IN_PLACE, move4, turnUpTo4, type Matrix4 } from '../../src/geom/matrix4.ts';
import { boxOfPoints } from '../../src/geom/ring.ts';
import { rad, vec3, type Vec3 } from '../../src/geom/vec.ts';
import type { FoamSheet } from '../../src/model/foam-stock.ts';
import { DEFAULT_FOAMS } from '../../src/model/foams.ts';
import type { LetIn } from '../../src/model/let-in.ts';
import { Assembly, type AssembledPlain } from '../../src/pipeline/assembly.ts';
import { insertPartWork } from '../../src/pipeline/plain/insert-part.ts';
import { shapePartWork } from '../../src/pipeline/plain/shape-part.ts';
import type { PartJoin } from '../../src/project/joins.ts';
import type { InsertPart, ShapePart } from '../../src/project/plain-part.ts';
import { expectOk } from '../support/expect-ok.ts';

const foam = (mm: number): FoamSheet => {
  const found = DEFAULT_FOAMS.find(({ thicknessMm }) => thicknessMm === mm);
  if (found === undefined) throw new Error(`no foam of ${mm} mm`);
  return found;
};

function shape(
  id: string,
  kind: string,
  sizes: Record<string, string>,
  mm: number,
  transform: Matrix4 = IN_PLACE,
): AssembledPlain {
  const part: ShapePart = {
    kind: 'shape',
    id: partId(id),
    name: id,
    transform,
    copies: 1,
    foams: [foamId(foam(mm).id)],
    shape: kind,
    sizes,
  };
  return { part, work: expectOk(shapePartWork(part, foam(mm))), foams: [foam(mm)] };
}

/** A pipe of foam about z from its foot, 28 mm inside, 40 mm outside. */
const pipe = (transform: Matrix4): AssembledPlain =>
  shape('pipe', 'pipe_wrap', { diameter: '28 mm', length: '300 mm' }, 6, transform);
/** Its foot at a point, along a direction. */
const from = (point: Vec3, direction: Vec3): Matrix4 => composed4(move4(point), turnUpTo4(direction));

const hole = (through: string, more: Partial<Extract<PartJoin, { kind: 'hole' }>> = {}): PartJoin => ({
  kind: 'hole',
  id: 'join-1',
  part: partId('pipe'),
  through: partId(through),
  ...more,
});
const lineOf = (lines: readonly LetIn[], side: LetIn['side']): LetIn => {
  const own = lines.filter((line) => line.side === side);
  expect(own).toHaveLength(1);
  return own[0];
};
const codes = (all: readonly { readonly code: string }[]): string[] => all.map(({ code }) => code);

describe('a part that goes through another', () => {
  // A disc of 10 mm foam, 300 mm across, its face at z = 10.
  const disc = shape('disc', 'ring', { outer_radius: '150 mm', inner_radius: '0 mm', segments: '1' }, 10);

  it.each([0, 30])('cuts an ellipse into a flat piece, leaning %i degrees: face and back apart by t tan', (tilt) => {
    const way = vec3(Math.sin(rad(tilt)), 0, Math.cos(rad(tilt)));
    const middle = vec3(0, 0, 10);
    const standing = from(vec3(middle.x - 150 * way.x, 0, middle.z - 150 * way.z), way);
    const { lines, joins, findings, steps } = new Assembly().of({ joins: [hole('disc')] }, [], [disc, pipe(standing)]);
    expect(findings).toEqual([]);
    expect(joins[0].count).toBe(1);
    // 20 mm and half a mm of room; a flat cut through a cylinder is an ellipse, its long half axis r / cos.
    const a = 20.5 / Math.cos(rad(tilt));
    expect(joins[0].bevelDeg?.max).toBeCloseTo(tilt, 0);
    const all = lines.get('disc/ring') ?? [];
    for (const side of ['face', 'back'] as const) {
      const { points, closed } = lineOf(all, side);
      expect(closed).toBe(true);
      const { minX, maxX, minY, maxY } = boxOfPoints(points);
      // The form of the pipe keeps its chord within 0.2 mm.
      expect(Math.abs((maxX - minX) / 2 - a)).toBeLessThan(0.25);
      expect(Math.abs((maxY - minY) / 2 - 20.5)).toBeLessThan(0.25);
      const shift = side === 'face' ? 0 : -10 * Math.tan(rad(tilt));
      expect((minX + maxX) / 2).toBeCloseTo(shift, 1);
    }
    expect(steps[0].text).toContain('0.5 mm of room');
  });

  it('more often than the other is there, or another that is there in both hands, is told: one hole is cut', () => {
    const four = pipe(from(vec3(0, 0, -150), vec3(0, 0, 1)));
    const standing = { ...four, part: { ...four.part, copies: 4 } };
    const { joins, findings } = new Assembly().of({ joins: [hole('disc')] }, [], [disc, standing]);
    expect(joins[0].count).toBe(1);
    expect(findings).toMatchObject([{ code: 'assembly/one-place', severity: 'warning', value: 4 }]);
    const asMany = { ...disc, part: { ...disc.part, copies: 4, mirrored: { count: 2, ownHand: 'left' as const } } };
    const told = new Assembly().of({ joins: [hole('disc')] }, [], [asMany, standing]).findings;
    expect(told).toMatchObject([{ code: 'assembly/one-hand', value: 2 }]);
  });

  it('cuts the saddle of two cylinders into the flat wrap of one', () => {
    // Layout of a T-joint, as sheet-metal pattern drafting has it: at p round the branch the flat hole lies at (rho asin(r cos p / R), r sin p).
    const host = shape('host', 'pipe_wrap', { diameter: '100 mm', length: '200 mm' }, 6);
    const standing = from(vec3(0, 0, 100.3), vec3(0, 1, 0));
    const { lines, joins } = new Assembly().of({ joins: [hole('host')] }, [], [host, pipe(standing)]);
    const [face, back, neutral, r] = [56, 50, 53, 20.5];
    // sin(bevel) = r cos²p / R: square along the pipe, most beside it.
    expect(joins[0].bevelDeg?.min).toBeCloseTo(0, 0);
    expect(Math.abs((joins[0].bevelDeg?.max ?? 0) - (180 / Math.PI) * Math.asin(r / face))).toBeLessThan(1);
    for (const [side, R] of [
      ['face', face],
      ['back', back],
    ] as const) {
      const { points } = lineOf(lines.get('host/wrap') ?? [], side);
      const { minX, maxX, minY, maxY } = boxOfPoints(points);
      const middle = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
      expect(Math.abs((maxX - minX) / 2 - neutral * Math.asin(r / R))).toBeLessThan(0.25);
      let worst = 0;
      for (let i = 0; i < points.length; i += 2) {
        const z = points[i + 1] - middle.y;
        const wanted = neutral * Math.asin(Math.sqrt(Math.max(0, r * r - z * z)) / R);
        const across = Math.abs(points[i] - middle.x);
        // Beside the ends of the line z alone tells little of the place across.
        if (Math.abs(z) < 0.95 * r) worst = Math.max(worst, Math.abs(across - wanted));
      }
      expect(worst).toBeLessThan(0.6);
    }
  });

  it('without a word is told, with how deep it is, and with one no more', () => {
    const standing = from(vec3(0, 0, -32), vec3(0, 0, 1));
    const blunt = shape('disc', 'ring', { outer_radius: '150 mm', inner_radius: '0 mm', segments: '1' }, 10);
    const { findings } = new Assembly().of({}, [], [blunt, pipe(standing)]);
    expect(codes(findings)).toEqual(['assembly/runs-into']);
    const apart = new Assembly().of({}, [], [blunt, pipe(from(vec3(0, 0, 12), vec3(0, 0, 1)))]);
    expect(apart.findings).toEqual([]);
    const lost = new Assembly().of({ joins: [hole('nothing')] }, [], [pipe(IN_PLACE)]);
    expect(codes(lost.findings)).toEqual(['assembly/lost-part']);
  });
});

describe('a part that sits on another', () => {
  it('leaves its outline where it comes down, on the near side alone', () => {
    const host = shape('host', 'pipe_wrap', { diameter: '100 mm', length: '200 mm' }, 6);
    // A badge of 2 mm over the pipe, facing +y, its back 1 mm off the face.
    const badge = shape(
      'badge',
      'ring',
      { outer_radius: '15 mm', inner_radius: '0 mm', segments: '1' },
      2,
      from(vec3(0, 57, 100), vec3(0, 1, 0)),
    );
    const seat: PartJoin = { kind: 'seat', id: 'join-1', part: partId('badge'), on: partId('host') };
    const { lines, joins, steps } = new Assembly().of({ joins: [seat] }, [], [host, badge]);
    expect(joins[0].count).toBe(1);
    const { points, what } = lineOf(lines.get('host/wrap') ?? [], 'face');
    expect(what).toBe('seat');
    const { minX, maxX, minY, maxY } = boxOfPoints(points);
    expect((maxX - minX) / 2).toBeCloseTo(53 * Math.asin(15 / 56), 1);
    expect((maxY - minY) / 2).toBeCloseTo(15, 1);
    expect(steps[0].work).toBe('lay');
  });
});

describe('a prop that travels', () => {
  it('is cut across every piece, where the plan has its joints', () => {
    const host = shape('host', 'pipe_wrap', { diameter: '100 mm', length: '600 mm' }, 6);
    const travel: PartJoin = {
      kind: 'travel',
      id: 'join-1',
      along: [0, 0, 1],
      bagMm: 400,
      joint: { kind: 'strap' },
    };
    const { lines, joins, findings, steps } = new Assembly().of({ joins: [travel] }, [], [host]);
    expect(joins[0].travel?.joints.map(({ atMm }) => Math.round(atMm))).toEqual([300]);
    for (const side of ['face', 'back'] as const) {
      const { points, closed, what } = lineOf(lines.get('host/wrap') ?? [], side);
      expect([closed, what]).toEqual([false, 'joint']);
      const { minX, maxX, minY, maxY } = boxOfPoints(points);
      expect(maxX - minX).toBeCloseTo(2 * Math.PI * 53, 1);
      expect(maxY - minY).toBeLessThan(1e-6);
      expect((minY + maxY) / 2).toBeCloseTo(300, 6);
    }
    expect(steps[0].text).toContain('straps');
    expect(codes(findings)).toEqual(['travel/ask-event']);
  });
});

describe('what is let into a part', () => {
  it('is drawn on its piece, and told where it is too near an edge', () => {
    const disc = shape('disc', 'ring', { outer_radius: '150 mm', inner_radius: '0 mm', segments: '1' }, 10);
    const part = (x: number, copies: number): InsertPart => ({
      kind: 'insert',
      id: partId('magnet'),
      name: 'magnet',
      transform: IN_PLACE,
      copies,
      foams: [foamId(foam(10).id)],
      wish: { kind: 'magnet', size: 'Disc 20 x 5', pole: 'north' },
      into: partId('disc'),
      at: { piece: 'ring', x, y: 0, turnDeg: 0 },
    });
    const of = (x: number, copies = 1) => {
      const own = part(x, copies);
      const work = expectOk(insertPartWork(own, [foam(10)], [10]));
      return new Assembly().of({}, [], [disc, { part: own, work, foams: [foam(10)], letIn: work.letIn }] as const);
    };
    const { lines, findings } = of(100);
    expect(findings).toEqual([]);
    const [line] = lines.get('disc/ring') ?? [];
    expect(line).toMatchObject({ what: 'pocket', side: 'back', closed: true });
    expect(boxOfPoints(line.points).maxX).toBeCloseTo(110, 1);
    expect(codes(of(100, 4).findings)).toEqual(['assembly/one-place']);
    const near = of(132).findings;
    expect(codes(near)).toEqual(['insert/near-edge']);
    expect(near[0].value).toBeCloseTo(8, 1);
  });
});
