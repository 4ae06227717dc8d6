import { fail, ok } from '../../base/result.ts';
import { rad, vec2, vec3, type Vec2 } from '../../geom/vec.ts';
import type { ShapePatch, ShapePiece } from '../../model/shape.ts';
import { integrate } from './integrate.ts';
import { degrees, measures, mm, mm2, mm3 } from './measures.ts';
import { edge, piece, rolled, side } from './pieces.ts';
import { bendWarnings, rolledSheet } from './rolled-sheet.ts';
import { curve } from './segments.ts';
import type { ShapeKind } from './shape-kind.ts';
import { angle, count, K, length, surface, thetas, THICKNESS } from './size-fields.ts';

const STEPS_30 = Array.from({ length: 7 }, (_, i) => 30 * i);

/** Length of the ellipse a plane cuts out of a cylinder: 4 a E(e), half axes `radius` and `radius / cos(cut)`. */
const ellipseLength = (radius: number, slope: number): number =>
  4 * integrate((t) => radius * Math.sqrt(1 + (slope * Math.sin(t)) ** 2), 0, Math.PI / 2);

/**
 * A pipe piece between two planes, rolled out from the lowest place of its top: y = low + base on the way round, x = r theta
 * (parallel line development). Heights are above the level through the axis at 0.
 */
function pipePiece(
  name: string,
  radius: number,
  top: (theta: number) => number,
  bottom: ((theta: number) => number) | null,
  extra: {
    readonly quantity?: number;
    readonly first: number;
    readonly seam: string;
    readonly topSeam?: string;
    readonly bottomSeam?: string;
    readonly topBevelDeg?: number;
  },
): ShapePiece {
  const { quantity = 1, first, seam, topSeam, bottomSeam } = extra;
  const at =
    (height: (theta: number) => number) =>
    (share: number): Vec2 =>
      vec2(2 * Math.PI * radius * share, height(first + 2 * Math.PI * share));
  const low = bottom ?? (() => 0);
  const lowEnd = (share: number): Vec2 => at(low)(share);
  return piece(
    name,
    [
      bottom === null
        ? side('base', lowEnd(0), lowEnd(1))
        : edge('lower cut', curve(at(low), 0, 1), { seam: bottomSeam }),
      side('end', lowEnd(1), at(top)(1), { seam }),
      edge(bottom === null ? 'cut' : 'upper cut', curve(at(top), 1, 0), { seam: topSeam }),
      side('start', at(top)(0), lowEnd(0), { seam }),
    ],
    { quantity, bend: rolled(radius) },
  );
}

const pipePatch = (
  name: string,
  radius: number,
  top: (theta: number) => number,
  bottom: (theta: number) => number,
  first: number,
): ShapePatch => ({
  piece: name,
  solid: (u, v) => {
    const theta = first + 2 * Math.PI * u;
    return vec3(radius * Math.cos(theta), radius * Math.sin(theta), bottom(theta) + (top(theta) - bottom(theta)) * v);
  },
  flat: (u, v) => {
    const theta = first + 2 * Math.PI * u;
    return vec2(2 * Math.PI * radius * u, bottom(theta) + (top(theta) - bottom(theta)) * v);
  },
});

export const TRUNCATED_CYLINDER: ShapeKind = {
  name: 'truncated_cylinder',
  also: ['cut_cylinder', 'mitred_pipe'],
  says: 'Pipe cut off at an angle: rolled out its cut is a cosine, y = H + (D / 2) cos(theta) tan(cut).',
  sizes: [
    length('diameter', 'across the surface that is named', { default: 100 }),
    length('centreline_height', 'height on the axis; with cut_angle_deg', {
      also: ['mean_height', 'height', 'centerline_height'],
    }),
    angle('cut_angle_deg', 'lean of the cut from square to the axis; with centreline_height', { least: 0, most: 89 }),
    length('h_min', 'least height; with h_max, in place of the other two', {
      least: 0,
      also: ['min_height', 'short_side'],
    }),
    length('h_max', 'greatest height', { also: ['max_height', 'long_side'] }),
    thetas(STEPS_30),
    { ...THICKNESS },
    K,
    surface('outside'),
  ],
  develop: (sizes) => {
    const sheet = rolledSheet(sizes);
    const measured = sizes.num('diameter') / 2;
    const radius = measured + sheet.toNeutral;
    if (!(measured + sheet.toInside >= 0) || !(radius > 0))
      return fail(
        'shape/too-thick',
        'The sheet does not fit into the diameter: take a thinner sheet or a larger diameter.',
      );
    const hasHeights = sizes.has('h_min') || sizes.has('h_max');
    const hasAngle = sizes.has('centreline_height') || sizes.has('cut_angle_deg');
    if (hasHeights && hasAngle)
      return fail('shape/too-many-sizes', 'Give h_min and h_max, or centreline_height and cut_angle_deg, not both.');
    if (hasHeights && !(sizes.has('h_min') && sizes.has('h_max')))
      return fail('shape/size-missing', 'Give both h_min and h_max.');
    const [height, slope] = hasHeights
      ? [(sizes.num('h_min') + sizes.num('h_max')) / 2, (sizes.num('h_max') - sizes.num('h_min')) / (2 * measured)]
      : [
          sizes.has('centreline_height') ? sizes.num('centreline_height') : 150,
          Math.tan(rad(sizes.has('cut_angle_deg') ? sizes.num('cut_angle_deg') : 45)),
        ];
    if (slope < 0) return fail('shape/sizes', 'h_max must be at least h_min: exchange them.');
    if (!(height - measured * slope >= 0))
      return fail(
        'shape/sizes',
        `The cut would pass through the base: make the height at least ${(measured * slope).toFixed(2)} mm or the angle smaller.`,
      );
    const top = (theta: number): number => height + radius * slope * Math.cos(theta);
    const thetaList = sizes.row('theta_deg').map(rad);
    const atSeam = Math.PI; // on the short side, where the seam is shortest
    const isPointed = top(atSeam) === 0;
    const made = isPointed
      ? piece(
          'pipe',
          [
            side('base', vec2(0, 0), vec2(2 * Math.PI * radius, 0)),
            edge(
              'cut',
              curve((s) => vec2(2 * Math.PI * radius * s, top(atSeam + 2 * Math.PI * s)), 1, 0),
            ),
          ],
          { bend: rolled(radius) },
        )
      : pipePiece('pipe', radius, top, null, { first: atSeam, seam: 'seam' });
    return ok({
      measures: measures({
        stretch_out: mm(2 * Math.PI * radius),
        ordinates: mm(thetaList.map(top)),
        x_of_ordinates: mm(thetaList.map((theta) => radius * theta)),
        area: mm2(2 * Math.PI * radius * height),
        lateral_area: mm2(2 * Math.PI * radius * height),
        cut_angle_deg: degrees(Math.atan(slope)),
        cut_edge_length: mm(ellipseLength(radius, slope)),
        ellipse_major_axis: mm(2 * radius * Math.hypot(1, slope)),
        ellipse_minor_axis: mm(2 * radius),
        cut_face_area: mm2(Math.PI * radius ** 2 * Math.hypot(1, slope)),
        h_min: mm(height - radius * slope),
        h_max: mm(height + radius * slope),
        mean_height: mm(height),
        centreline_height: mm(height),
        neutral_diameter: mm(2 * radius),
        volume: mm3(Math.PI * measured ** 2 * height),
      }),
      pieces: [made],
      patches: [pipePatch('pipe', radius, top, () => 0, atSeam)],
      warnings: bendWarnings(sheet, radius),
    });
  },
};

/**
 * Elbow of n pieces: two ends of half a piece and n - 2 whole ones, all cut at the mitre, angle / (2 (n - 1)). A whole piece is
 * 2 (R + r cos theta) tan(mitre) long at theta, from the outside of the bend.
 */
export const ELBOW: ShapeKind = {
  name: 'elbow',
  also: ['gored_elbow', 'mitred_elbow', 'lobster_back_elbow'],
  says: 'Elbow of straight pipe pieces with mitred joints: two ends and the pieces between them.',
  sizes: [
    length('diameter', 'across the surface that is named', { default: 100 }),
    length('bend_radius', 'from the centre of the bend to the middle line of the pipe', {
      default: 150,
      also: ['centreline_radius', 'centerline_radius', 'throat_plus_radius'],
    }),
    angle('angle_deg', 'turn of the whole elbow', {
      default: 90,
      least: 0.1,
      most: 360,
      also: ['bend_angle_deg', 'elbow_angle_deg'],
    }),
    count('pieces', 'pieces, both ends counted', {
      default: 4,
      least: 2,
      most: 200,
      also: ['number_of_pieces', 'segments', 'gores'],
    }),
    length('leg', 'straight pipe added to each end', { default: 0, least: 0 }),
    thetas(STEPS_30),
    { ...THICKNESS },
    K,
    surface('outside'),
  ],
  develop: (sizes) => {
    const sheet = rolledSheet(sizes);
    const measured = sizes.num('diameter') / 2;
    const radius = measured + sheet.toNeutral;
    if (!(measured + sheet.toInside >= 0) || !(radius > 0))
      return fail(
        'shape/too-thick',
        'The sheet does not fit into the diameter: take a thinner sheet or a larger diameter.',
      );
    const [bend, pieces, leg] = [sizes.num('bend_radius'), sizes.num('pieces'), sizes.num('leg')];
    const mitre = rad(sizes.num('angle_deg')) / (2 * (pieces - 1));
    if (mitre >= rad(80)) return fail('shape/sizes', 'The joints would lean more than 80 degrees: use more pieces.');
    if (
      !(bend >= Math.max(radius, measured + sheet.toOutside)) &&
      leg < (Math.max(radius, measured + sheet.toOutside) - bend) * Math.tan(mitre)
    )
      return fail(
        'shape/sizes',
        'The pipe would run through itself at the throat: make bend_radius at least half the diameter.',
      );
    if (pieces > 2 && !(bend >= measured + sheet.toOutside))
      return fail(
        'shape/sizes',
        'The pipe would run through itself at the throat: make bend_radius at least half the diameter.',
      );
    const slope = Math.tan(mitre);
    const half = (theta: number): number => (bend + radius * Math.cos(theta)) * slope;
    const atThroat = Math.PI;
    const isPointed = half(atThroat) <= 1e-12 * radius;
    if (isPointed)
      return fail('shape/sizes', 'The pieces would come to a point at the throat: make bend_radius a little larger.');
    const end = (theta: number): number => leg + half(theta);
    const made = [
      pipePiece('end', radius, end, null, { first: atThroat, seam: 'end seam', quantity: 2, topSeam: 'joint' }),
      ...(pieces > 2
        ? [
            pipePiece('middle', radius, half, (theta) => -half(theta), {
              first: atThroat,
              seam: 'middle seam',
              quantity: pieces - 2,
              topSeam: 'joint',
              bottomSeam: 'joint',
            }),
          ]
        : []),
    ];
    const thetaList = sizes.row('theta_deg').map(rad);
    const centreline = 2 * leg + 2 * (pieces - 1) * bend * slope;
    return ok({
      measures: measures({
        mitre_angle_deg: degrees(mitre),
        cut_angle_deg: degrees(mitre),
        gore_angle_deg: degrees(2 * mitre),
        piece_angle_deg: degrees(2 * mitre),
        end_piece_angle_deg: degrees(mitre),
        stretch_out: mm(2 * Math.PI * radius),
        ordinates: mm(thetaList.map(end)),
        end_ordinates: mm(thetaList.map(end)),
        middle_ordinates: pieces > 2 ? mm(thetaList.map((theta) => 2 * half(theta))) : undefined,
        x_of_ordinates: mm(thetaList.map((theta) => radius * theta)),
        throat_radius: mm(bend - radius),
        heel_radius: mm(bend + radius),
        end_throat: mm(end(Math.PI)),
        end_heel: mm(end(0)),
        end_centreline: mm(leg + bend * slope),
        middle_throat: pieces > 2 ? mm(2 * half(Math.PI)) : undefined,
        middle_heel: pieces > 2 ? mm(2 * half(0)) : undefined,
        middle_centreline: pieces > 2 ? mm(2 * bend * slope) : undefined,
        centreline_length: mm(centreline),
        cut_edge_length: mm(ellipseLength(radius, slope)),
        area: mm2(2 * Math.PI * radius * centreline),
        end_area: mm2(2 * Math.PI * radius * (leg + bend * slope)),
        middle_area: pieces > 2 ? mm2(4 * Math.PI * radius * bend * slope) : undefined,
        volume: mm3(Math.PI * measured ** 2 * centreline),
      }),
      pieces: made,
      patches: elbowPatches(pieces, radius, bend, leg, mitre),
      warnings: bendWarnings(sheet, radius),
    });
  },
};

/** Each piece in its place: the pipe runs along the tangent at the middle of its own turn about the y axis. */
function elbowPatches(pieces: number, radius: number, bend: number, leg: number, mitre: number): ShapePatch[] {
  const half = (theta: number): number => (bend + radius * Math.cos(theta)) * Math.tan(mitre);
  const [end, middle] = [
    pipePatch(
      'end',
      radius,
      (theta) => leg + half(theta),
      () => 0,
      Math.PI,
    ),
    pipePatch('middle', radius, half, (theta) => -half(theta), Math.PI),
  ];
  return Array.from({ length: pieces }, (_, i) => {
    const isEnd = i === 0 || i === pieces - 1;
    const { piece: name, solid, flat } = isEnd ? end : middle;
    // The last piece is the first one mirrored, which is the first one again: it is alike on both sides.
    const isLast = i === pieces - 1;
    const turn = 2 * mitre * i;
    return {
      piece: name,
      flat,
      solid: (u, v) => {
        const p = solid(isLast ? 1 - u : u, v);
        const along = isEnd ? (isLast ? leg - p.z : p.z - leg) : p.z;
        const out = bend + p.x;
        // Out along (cos, sin) of the turn, on along (-sin, cos): the pipe's own round runs from out to up.
        return vec3(out * Math.cos(turn) - along * Math.sin(turn), out * Math.sin(turn) + along * Math.cos(turn), -p.y);
      },
    };
  });
}
