import { fail, ok } from '../../base/result.ts';
import { rad, vec2 } from '../../geom/vec.ts';
import { arc } from '../../geom/outline.ts';
import { degrees, measures, mm, mm2 } from './measures.ts';
import { edge, piece, side } from './pieces.ts';
import type { ShapeKind } from './shape-kind.ts';
import { angle, length } from './size-fields.ts';
import type { Sizes } from './sizes.ts';

/** Half the angle whose sine over itself is `ratio`, 0 < ratio < 1: Newton from the series of the sine, within 0 to pi. */
function halfFromChordOverArc(ratio: number): number {
  let [low, high] = [0, Math.PI];
  let x = Math.sqrt(6 * (1 - ratio));
  for (let i = 0; i < 200; i += 1) {
    const f = Math.sin(x) / x - ratio;
    if (f > 0) low = x;
    else high = x;
    const next = x - (f * x * x) / (x * Math.cos(x) - Math.sin(x));
    const to = next > low && next < high ? next : (low + high) / 2;
    if (Math.abs(to - x) <= 1e-15 * x) return to;
    x = to;
  }
  return x;
}

/** Half the angle at which an arc is least long over its rise: tan(x / 2) = x. Past it the same arc and rise come again. */
const LEAST_HALF = 2.331122370414422;
const arcOverRise = (half: number): number => half / Math.sin(half / 2) ** 2;

/** Half the angle whose arc over rise is `ratio`, at most {@link LEAST_HALF}: x / sin²(x / 2) falls all the way there. */
function halfFromArcOverSagitta(ratio: number): number {
  let [low, high] = [1e-12, LEAST_HALF];
  for (let i = 0; i < 200; i += 1) {
    const x = (low + high) / 2;
    if (arcOverRise(x) > ratio) low = x;
    else high = x;
  }
  return (low + high) / 2;
}

/** Radius and half angle of an arc from two of its sizes; a sentence where they do not go together. */
function arcOf(
  sizes: Sizes,
  names: readonly [string, string],
): { readonly radius: number; readonly half: number } | string {
  const is = (a: string, b: string): boolean => names.includes(a) && names.includes(b);
  const [chord, sagitta, radius, angleDeg, long] = ['chord', 'sagitta', 'radius', 'angle_deg', 'arc_length'].map(
    (name) => (sizes.has(name) ? sizes.num(name) : NaN),
  );
  const half = rad(angleDeg) / 2;
  if (is('chord', 'sagitta'))
    return { radius: chord ** 2 / (8 * sagitta) + sagitta / 2, half: 2 * Math.atan2(2 * sagitta, chord) };
  if (is('radius', 'angle_deg')) return { radius, half };
  if (is('chord', 'radius'))
    return chord <= 2 * radius
      ? { radius, half: Math.asin(chord / 2 / radius) }
      : 'The chord must be at most twice the radius.';
  if (is('radius', 'sagitta'))
    return sagitta <= 2 * radius
      ? { radius, half: 2 * Math.asin(Math.sqrt(sagitta / 2 / radius)) }
      : 'The rise must be at most twice the radius.';
  if (is('radius', 'arc_length'))
    return long <= 2 * Math.PI * radius
      ? { radius, half: long / 2 / radius }
      : 'The arc is longer than the whole circle: make the radius larger.';
  if (is('angle_deg', 'arc_length')) return { radius: long / (2 * half), half };
  if (is('angle_deg', 'chord'))
    return half < Math.PI - 1e-9 ? { radius: chord / 2 / Math.sin(half), half } : 'A whole turn has no chord.';
  if (is('angle_deg', 'sagitta')) return { radius: sagitta / (2 * Math.sin(half / 2) ** 2), half };
  if (is('chord', 'arc_length')) {
    if (!(chord < long)) return 'The chord must be less than the arc.';
    const found = halfFromChordOverArc(chord / long);
    return { radius: long / 2 / found, half: found };
  }
  if (!(long >= sagitta * arcOverRise(LEAST_HALF))) return 'The arc must be at least 2.76 times the rise.';
  const found = halfFromArcOverSagitta(long / sagitta);
  return { radius: long / 2 / found, half: found };
}

const NAMES = ['chord', 'sagitta', 'radius', 'angle_deg', 'arc_length'];

/** Arc and segment of a circle from two of chord, rise, radius, angle and arc: R = c² / (8 s) + s / 2, segment R² (angle - sin angle) / 2. */
export const ARC: ShapeKind = {
  name: 'arc',
  also: ['circular_arc', 'circular_segment', 'segment'],
  says: 'Arc of a circle from two of chord, rise, radius, angle and length, with its segment.',
  sizes: [
    length('chord', 'straight from end to end', { also: ['span', 'width'] }),
    length('sagitta', 'rise of the arc over its chord', { also: ['rise', 'height'] }),
    length('radius', 'radius of the circle'),
    angle('angle_deg', 'how far round it goes', { over: 0, most: 360 }),
    length('arc_length', 'along the arc', { also: ['length'] }),
  ],
  develop: (sizes) => {
    const given = NAMES.filter((name) => sizes.has(name));
    if (given.length > 2 || given.length === 1)
      return fail('shape/sizes', `Give two of ${NAMES.slice(0, -1).join(', ')} and arc_length.`);
    const found =
      given.length === 0
        ? { radius: 300 ** 2 / (8 * 40) + 20, half: 2 * Math.atan2(80, 300) }
        : arcOf(sizes, [given[0], given[1]]);
    if (typeof found === 'string') return fail('shape/sizes', found);
    const { radius, half } = found;
    const chord = 2 * radius * Math.sin(half);
    const turn = 2 * half;
    // For a flat arc the difference would lose its digits: the series is good to rounding there.
    const excess = turn < 1e-3 ? turn ** 3 / 6 - turn ** 5 / 120 : turn - Math.sin(turn);
    const area = (radius ** 2 * excess) / 2;
    const ends = arc(vec2(0, 0), radius, Math.PI / 2 - half, turn);
    const isWhole = turn > 2 * Math.PI - 1e-12;
    return ok({
      measures: measures({
        radius: mm(radius),
        diameter: mm(2 * radius),
        angle_deg: degrees(turn),
        arc_length: mm(radius * turn),
        chord: mm(chord),
        sagitta: mm(2 * radius * Math.sin(half / 2) ** 2),
        segment_area: mm2(area),
        sector_area: mm2((radius ** 2 * turn) / 2),
        arc_minus_chord: mm(radius * turn - chord),
        curvature_per_m: { value: 1000 / radius, unit: '1/m' },
      }),
      pieces: [
        piece(
          'segment',
          isWhole
            ? [edge('circle', arc(vec2(0, 0), radius, 0, 2 * Math.PI))]
            : [edge('arc', ends), side('chord', ends.to, ends.from)],
        ),
      ],
    });
  },
};
