import { fail, ok } from '../../base/result.ts';
import { rad, vec3 } from '../../geom/vec.ts';
import type { ShapePatch } from '../../model/shape.ts';
import { degrees, measures, mm, mm2, mm3 } from './measures.ts';
import { ellipseLength, pipePatch, pipePiece } from './pipe-piece.ts';
import { bendWarnings, rolledPipe } from './rolled-sheet.ts';
import type { ShapeKind } from './shape-kind.ts';
import { angle, count, K, length, STEPS_30, surface, thetas, THICKNESS } from './size-fields.ts';

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
      also: ['bend_angle_deg', 'elbow_angle_deg', 'total_angle_deg', 'turn_deg'],
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
    const pipe = rolledPipe(sizes);
    if (!pipe.ok) return pipe;
    const { sheet, measured, radius } = pipe.value;
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
      pipePiece('end', radius, end, null, { first: atThroat, seam: 'end seam', quantity: 2, topSeam: 'joint', mitre }),
      ...(pieces > 2
        ? [
            pipePiece('middle', radius, half, (theta) => -half(theta), {
              first: atThroat,
              seam: 'middle seam',
              quantity: pieces - 2,
              topSeam: 'joint',
              bottomSeam: 'joint',
              mitre,
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
