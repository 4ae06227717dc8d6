import { fail, ok } from '../../base/result.ts';
import { length3, sub3, vec2, vec3, type Vec2, type Vec3 } from '../../geom/vec.ts';
import { curve } from '../../geom/outline-curve.ts';
import type { ShapeEdge, ShapeFold, ShapePatch } from '../../model/shape.ts';
import { degrees, measures, mm, mm2 } from './measures.ts';
import { edge, piece, side } from './pieces.ts';
import { bendWarnings, rolledSheet } from './rolled-sheet.ts';
import type { ShapeKind } from './shape-kind.ts';
import { count, K, length, surface, THICKNESS } from './size-fields.ts';
import type { Sizes } from './sizes.ts';
import { conePlace, unrolledCone, type UnrolledCone } from './unrolled-cone.ts';

const QUARTER = Math.PI / 2;

/**
 * Transition from a rectangle below to a circle above: four flat triangles, each on a side of the rectangle with its tip where the circle's
 * tangent runs along that side, and between them four parts of oblique cones with their apexes in the corners (triangulation of sheet-metal
 * books, with the cones exact). The seam runs up the middle of the front triangle.
 *
 *    c3 ---- c2         corner j and the quarter of the circle from j - 1 to j quarter turns:
 *    |   ()   |         quarter 0 faces corner c1 = (+, +) ...
 *    c0 ---- c1
 */
export const SQUARE_TO_ROUND: ShapeKind = {
  name: 'square_to_round',
  also: ['rectangle_to_round', 'transition'],
  says: 'Transition from a square or rectangle to a circle: four flat triangles and four parts of oblique cones.',
  sizes: [
    length('side', 'side of the square, along x, of the surface that is named', {
      default: 100,
      also: ['square_side', 'length', 'base_length', 'side_a', 'base_side', 'square'],
    }),
    length('depth', 'other side of the rectangle, along y; left out for a square', {
      also: ['width', 'base_width', 'side_b'],
    }),
    length('diameter', 'across the circle', {
      default: 70,
      also: ['top_diameter', 'round_diameter', 'circle_diameter'],
    }),
    length('height', 'from the rectangle to the circle', { default: 80 }),
    length('offset_x', 'how far the middle of the circle lies beside that of the rectangle, along x', {
      default: 0,
      least: -100_000,
    }),
    length('offset_y', 'the same along y', { default: 0, least: -100_000 }),
    count('divisions', 'parts of each quarter of the circle at which true lengths are given', {
      default: 3,
      most: 90,
      also: ['divisions_per_quarter', 'quarter_divisions'],
    }),
    { ...THICKNESS },
    K,
    surface('outside'),
  ],
  develop: (sizes) => {
    const sheet = rolledSheet(sizes);
    const measured = measuredOf(sizes);
    if (!isRoomy(movedBy(measured, sheet.toInside)) || !isRoomy(movedBy(measured, sheet.toNeutral)))
      return fail(
        'shape/too-thick',
        'The sheet leaves no room inside the circle or the rectangle: take a thinner sheet or a larger shape.',
      );
    const { long, deep, height, radius, dx, dy } = movedBy(measured, sheet.toNeutral);
    const rim = (t: number): Vec3 => vec3(dx + radius * Math.cos(t), dy + radius * Math.sin(t), height);
    const speed = (t: number): Vec3 => vec3(-radius * Math.sin(t), radius * Math.cos(t), 0);
    // Corner q lies outside the quarter of the circle that begins at q quarter turns.
    const corners = [
      vec3(long / 2, deep / 2, 0),
      vec3(-long / 2, deep / 2, 0),
      vec3(-long / 2, -deep / 2, 0),
      vec3(long / 2, -deep / 2, 0),
    ];
    const cones = corners.map((corner, q) => unrolledCone(corner, rim, speed, q * QUARTER, (q + 1) * QUARTER));
    const startMiddle = vec3(0, -deep / 2, 0); // the seam, half-way along the front side
    const tip = rim(-QUARTER);
    const parts = layRound(corners, cones, rim, startMiddle, tip);
    const area =
      cones.reduce((sum, cone, q) => sum + cone.area((q + 1) * QUARTER), 0) +
      parts.triangleAreas.reduce((sum, one) => sum + one, 0);
    const divisions = sizes.num('divisions');
    const lengthsOf = (q: number): number[] =>
      Array.from({ length: divisions + 1 }, (_, i) => cones[q].reach((q + i / divisions) * QUARTER));
    const folds: ShapeFold[] = parts.folds;
    const outline: ShapeEdge[] = parts.outline;
    const isSquare = long === deep && dx === 0 && dy === 0;
    if (!parts.isSimple) return fail('shape/sizes', 'The development would lap over itself: make the height larger.');
    return ok({
      measures: measures({
        true_lengths: mm(lengthsOf(0)),
        element_lengths: mm(lengthsOf(0)),
        ...(isSquare
          ? {}
          : Object.fromEntries([1, 2, 3].map((q) => [`true_lengths_corner_${q + 1}`, mm(lengthsOf(q))]))),
        corner_to_circle: mm(cones[0].reach(0)),
        longest: mm(Math.max(...[0, 1, 2, 3].flatMap(lengthsOf))),
        shortest: mm(Math.min(...[0, 1, 2, 3].flatMap(lengthsOf))),
        triangle_height: mm(parts.seamLength),
        slant: mm(parts.seamLength),
        seam_length: mm(parts.seamLength),
        triangle_heights: mm(parts.triangleHeights),
        cone_angle_deg: degrees(cones[0].turn(QUARTER)),
        cone_angles_deg: degrees(cones.map((cone, q) => cone.turn((q + 1) * QUARTER))),
        cone_areas: mm2(cones.map((cone, q) => cone.area((q + 1) * QUARTER))),
        triangle_areas: mm2(parts.triangleAreas),
        quarter_arc: mm(radius * QUARTER),
        chord_of_division: mm(2 * radius * Math.sin(QUARTER / divisions / 2)),
        arc_of_division: mm((radius * QUARTER) / divisions),
        circumference: mm(2 * Math.PI * radius),
        base_perimeter: mm(2 * (long + deep)),
        area: mm2(area),
      }),
      pieces: [piece('transition', outline, { bend: { kind: 'folded' }, folds })],
      patches: parts.patches,
      // At its upper rim a cone's part is bent to about the circle.
      warnings: bendWarnings(sheet, radius),
    });
  },
};

/** Sides of the rectangle, height, radius of the circle and place of its middle beside the rectangle's, mm. */
interface Transition {
  readonly long: number;
  readonly deep: number;
  readonly height: number;
  readonly radius: number;
  readonly dx: number;
  readonly dy: number;
}

function measuredOf(sizes: Sizes): Transition {
  const [long, height, dx, dy] = ['side', 'height', 'offset_x', 'offset_y'].map((name) => sizes.num(name));
  const deep = sizes.has('depth') ? sizes.num('depth') : long;
  return { long, deep, height, radius: sizes.num('diameter') / 2, dx, dy };
}

/**
 * The surface of the sheet that lies outward by `out`, with level rims: the planes of the four triangles move by so much, and the circle that
 * touches them all goes with them. For a square under the middle of its circle all four triangles are exact; else the circle, which would be
 * a little oval, takes the mean of both ways.
 */
function movedBy(shape: Transition, out: number): Transition {
  const { long, deep, height, radius, dx, dy } = shape;
  // How far a triangle's plane moves on the level, by how far its tip lies inside its side.
  const level = (inward: number): number => out * Math.hypot(1, inward / height);
  const [right, left] = [level(long / 2 - (dx + radius)), level(long / 2 + (dx - radius))];
  const [back, front] = [level(deep / 2 - (dy + radius)), level(deep / 2 + (dy - radius))];
  return {
    long: long + right + left,
    deep: deep + back + front,
    height,
    radius: radius + (right + left + back + front) / 4,
    dx,
    dy,
  };
}

const isRoomy = ({ long, deep, radius }: Transition): boolean => long > 0 && deep > 0 && radius > 0;

interface Laid {
  readonly outline: ShapeEdge[];
  readonly folds: ShapeFold[];
  readonly patches: ShapePatch[];
  readonly triangleAreas: readonly number[];
  readonly triangleHeights: readonly number[];
  readonly seamLength: number;
  readonly isSimple: boolean;
}

const apart = (p: Vec3, q: Vec3): number => length3(sub3(p, q));

/** The corner of a triangle whose sides from `a` and `b` are given, on the right of a → b seen along it. */
function third(a: Vec2, b: Vec2, fromA: number, fromB: number, isLeft: boolean): Vec2 {
  const base = Math.hypot(b.x - a.x, b.y - a.y);
  const along = (fromA ** 2 - fromB ** 2 + base ** 2) / (2 * base);
  const off = Math.sqrt(Math.max(0, (fromA - along) * (fromA + along))) * (isLeft ? 1 : -1);
  const [ux, uy] = [(b.x - a.x) / base, (b.y - a.y) / base];
  return vec2(a.x + along * ux - off * uy, a.y + along * uy + off * ux);
}

/**
 * Lays the parts side by side, seen from outside, the rectangle below: half a triangle, cone, triangle, cone, triangle, cone, triangle, cone,
 * half a triangle. Round the shape counter-clockwise seen from above is to the right.
 */
function layRound(
  corners: readonly Vec3[],
  cones: readonly UnrolledCone[],
  rim: (t: number) => Vec3,
  middle: Vec3,
  tip: Vec3,
): Laid {
  const order = [3, 0, 1, 2];
  const below: Vec2[] = [vec2(0, 0)];
  const folds: ShapeFold[] = [];
  const patches: ShapePatch[] = [];
  const curves: ShapeEdge[] = [];
  const triangleAreas: number[] = [];
  const triangleHeights: number[] = [];
  const add = (a3: Vec3, b3: Vec3, t3: Vec3, a: Vec2, b: Vec2, t: Vec2): void => {
    triangleAreas.push(Math.abs((b.x - a.x) * (t.y - a.y) - (b.y - a.y) * (t.x - a.x)) / 2);
    triangleHeights.push((2 * triangleAreas[triangleAreas.length - 1]) / apart(a3, b3));
    patches.push({
      piece: 'transition',
      facets: [0, 0],
      // Only the seam is cut: the first half of the front triangle begins with it.
      cut: patches.length === 0 ? ['u0'] : [],
      solid: (u, v) => mix3(mix3(a3, b3, u), t3, v),
      flat: (u, v) => mix2(mix2(a, b, u), t, v),
    });
  };
  let top = vec2(0, apart(middle, tip));
  const firstTop = top;
  let at = corners[3];
  let last = third(below[0], top, apart(middle, at), apart(tip, at), false);
  add(middle, at, tip, below[0], last, top);
  below.push(last);
  order.forEach((q, i) => {
    const cone = cones[q];
    const corner = last;
    folds.push({ from: corner, to: top, angleDeg: 0 });
    const start = Math.atan2(top.y - corner.y, top.x - corner.x);
    const [from, to] = [q * QUARTER, (q + 1) * QUARTER];
    // Seen from outside the way round runs to the right, clockwise about a corner below.
    const place = (t: number, share = 1): Vec2 => {
      const p = conePlace(cone, t, share);
      return vec2(
        corner.x + p.x * Math.cos(start) + p.y * Math.sin(start),
        corner.y + p.x * Math.sin(start) - p.y * Math.cos(start),
      );
    };
    curves.push(
      edge(
        `circle ${i + 1}`,
        curve((t) => place(t), to, from),
      ),
    );
    const here = corners[q];
    patches.push({
      piece: 'transition',
      facets: [1 / 4, 0],
      cut: [],
      solid: (u, v) => mix3(here, rim(from + (to - from) * u), v),
      flat: (u, v) => place(from + (to - from) * u, v),
    });
    top = place(to);
    folds.push({ from: corner, to: top, angleDeg: 0 });
    const isLast = i === 3;
    const next = isLast ? middle : corners[order[i + 1]];
    const topInSpace = rim(to);
    const nextFlat = third(corner, top, apart(here, next), apart(topInSpace, next), false);
    add(here, next, topInSpace, corner, nextFlat, top);
    below.push(nextFlat);
    last = nextFlat;
    at = next;
  });
  const bottom = below.slice(0, -1).map((p, i) => side(`side ${i + 1}`, p, below[i + 1]));
  const end = below[below.length - 1];
  const outline = [
    ...bottom,
    side('end', end, top, { seam: 'seam' }),
    ...curves.reverse(),
    side('start', firstTop, below[0], { seam: 'seam' }),
  ];
  const turn = cones.reduce((sum, cone, q) => sum + cone.turn((q + 1) * QUARTER), 0);
  return {
    outline,
    folds,
    patches,
    triangleAreas,
    triangleHeights,
    seamLength: apart(middle, tip),
    isSimple: turn < 2 * Math.PI,
  };
}

const mix2 = (a: Vec2, b: Vec2, s: number): Vec2 => vec2(a.x + (b.x - a.x) * s, a.y + (b.y - a.y) * s);
const mix3 = (a: Vec3, b: Vec3, s: number): Vec3 =>
  vec3(a.x + (b.x - a.x) * s, a.y + (b.y - a.y) * s, a.z + (b.z - a.z) * s);
