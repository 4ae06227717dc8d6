import { fail, ok, type Result } from '../../base/result.ts';
import { vec2, type Vec2 } from '../../geom/vec.ts';
import { line } from '../../geom/outline.ts';
import type { ShapePiece } from '../../model/shape.ts';
import { measures, mm, mm2, plain } from './measures.ts';
import { edge, piece, side } from './pieces.ts';
import type { Development, ShapeKind } from './shape-kind.ts';
import { count, length } from './size-fields.ts';
import type { Sizes } from './sizes.ts';

/** One finger or gap along a joint: where it begins and how wide it is, mm. */
interface Finger {
  readonly from: number;
  readonly width: number;
  /** Of the first slab; else the second has a finger here. */
  readonly isFirst: boolean;
}

/** Most fingers on one joint. */
const MOST_FINGERS = 500;

const SIZES = [
  length('length', 'of the joint', { default: 120, also: ['joint_length', 'width', 'board_width'] }),
  length('thickness', 'of the first slab', { default: 10, also: ['thickness_a'] }),
  length('other_thickness', 'of the second slab; left out where both are alike', { also: ['thickness_b'] }),
  length(
    'finger_width',
    'width wished for: the nearest that divides the joint is taken; left out, twice the thickness',
  ),
  count('fingers', 'in place of the width: fingers and gaps of one slab, counted together', { most: MOST_FINGERS }),
  length('clearance', 'what a gap is wider than its finger; less than nothing for a tight joint', {
    default: 0,
    least: -5,
    most: 20,
  }),
  length('slab_length', 'how far each slab reaches from the joint', { default: 150, also: ['board_length'] }),
];

/**
 * Two slabs at a square corner with fingers as long as the other slab is thick. An odd number gives the first slab a finger at both ends (box
 * joint); an even one gives each slab a finger at one end, so that both are alike (comb joint).
 */
function developJoint(sizes: Sizes, isOdd: boolean): Result<Development> {
  const [long, thickness, clearance, reach] = ['length', 'thickness', 'clearance', 'slab_length'].map((name) =>
    sizes.num(name),
  );
  const other = sizes.has('other_thickness') ? sizes.num('other_thickness') : thickness;
  if (sizes.has('fingers') && sizes.has('finger_width'))
    return fail('shape/too-many-sizes', 'Give fingers or finger_width, not both.');
  const wished = sizes.has('finger_width') ? sizes.num('finger_width') : 2 * thickness;
  const least = isOdd ? 3 : 2;
  const half = Math.max(1, Math.round(isOdd ? (long / wished - 1) / 2 : long / wished / 2));
  const parts = sizes.has('fingers') ? sizes.num('fingers') : isOdd ? 2 * half + 1 : 2 * half;
  if (parts > MOST_FINGERS)
    return fail('shape/sizes', `There would be more than ${MOST_FINGERS} fingers: make finger_width larger.`);
  if (parts < least || parts % 2 !== (isOdd ? 1 : 0))
    return fail(
      'shape/sizes',
      isOdd
        ? 'A box joint has an odd number of fingers and gaps, at least 3: change fingers.'
        : 'A comb joint has an even number of fingers and gaps, at least 2: change fingers.',
    );
  const pitch = long / parts;
  if (!(pitch > 2 * Math.abs(clearance)))
    return fail(
      'shape/sizes',
      'The clearance leaves hardly anything of a finger: make it smaller or the fingers wider.',
    );
  if (!(reach > Math.max(thickness, other)))
    return fail('shape/sizes', 'slab_length must be more than the thickness of both slabs.');
  const fingers = Array.from({ length: parts }, (_, i): Finger => ({
    from: i * pitch,
    width: pitch,
    isFirst: i % 2 === 0,
  }));
  const slab = (name: string, isFirst: boolean, depth: number): ShapePiece =>
    combPiece(
      name,
      fingers.map((one) => one.isFirst === isFirst),
      pitch,
      { long, reach, depth, clearance },
    );
  const own = fingers.filter(({ isFirst }) => isFirst).length;
  const inner = parts - 1;
  return ok({
    pieces: [slab('first slab', true, other), slab('second slab', false, thickness)],
    measures: measures({
      fingers: plain(parts),
      finger_width: mm(pitch),
      gap_width: mm(pitch + clearance),
      cut_finger_width: mm(pitch - clearance),
      fingers_of_first: plain(own),
      fingers_of_second: plain(parts - own),
      finger_length: mm(other),
      other_finger_length: mm(thickness),
      gluing_area: mm2(inner * thickness * other + long * thickness),
      side_gluing_area: mm2(inner * thickness * other),
      butt_gluing_area: mm2(long * thickness),
      edge_positions: mm(Array.from({ length: parts + 1 }, (_, i) => i * pitch)),
    }),
    warnings: [],
  });
}

/** A slab with fingers on its upper side; every gap is wider by the clearance, half on either flank. */
function combPiece(
  name: string,
  isFinger: readonly boolean[],
  pitch: number,
  {
    long,
    reach,
    depth,
    clearance,
  }: { readonly long: number; readonly reach: number; readonly depth: number; readonly clearance: number },
): ShapePiece {
  const points: Vec2[] = [];
  const parts = isFinger.length;
  const levelOf = (i: number): number => (isFinger[i] ? reach : reach - depth);
  for (let i = parts - 1; i >= 0; i -= 1) {
    // A flank lies back into the finger by half the clearance.
    const into = (isOwn: boolean): number => (isOwn ? -clearance / 2 : clearance / 2);
    const right = i === parts - 1 ? long : (i + 1) * pitch + into(isFinger[i]);
    const left = i === 0 ? 0 : i * pitch - into(isFinger[i]);
    points.push(vec2(right, levelOf(i)), vec2(left, levelOf(i)));
  }
  const comb = points.slice(1).map((to, i) => line(points[i], to));
  return piece(name, [
    side('far side', vec2(0, 0), vec2(long, 0)),
    side('right side', vec2(long, 0), points[0]),
    edge('fingers', comb),
    side('left side', points[points.length - 1], vec2(0, 0)),
  ]);
}

export const BOX_JOINT: ShapeKind = {
  name: 'box_joint',
  also: ['finger_joint'],
  says: 'Corner of two slabs with an odd number of fingers, one slab with a finger at both ends.',
  sizes: SIZES,
  develop: (sizes) => developJoint(sizes, true),
};

export const COMB_JOINT: ShapeKind = {
  name: 'comb_joint',
  also: ['comb'],
  says: 'Corner of two like slabs with an even number of fingers, each slab beginning with a finger at one end.',
  sizes: SIZES,
  develop: (sizes) => developJoint(sizes, false),
};
