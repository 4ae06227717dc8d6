import { fail, ok, type Result } from '../../base/result.ts';
import { rad, vec2 } from '../../geom/vec.ts';
import { measures, mm, mm2, mm3, plain, degrees, type Figure } from './measures.ts';
import { piece, rolled, side } from './pieces.ts';
import type { Development, ShapeKind } from './shape-kind.ts';
import { angle, choice, length, MOST_LENGTH_MM } from './size-fields.ts';
import type { Sizes } from './sizes.ts';

const DEG = 180 / Math.PI;

/**
 * Edging laid flat round a frame of straight sides, or round a circle. A mitre halves the corner: its cut leans 90 - corner / 2 from square,
 * and across a width w an end is w cot(corner / 2) shorter inside than outside.
 */
interface Profile {
  /** Width it covers on the frame, and height, of a profile of that radius, mm. */
  readonly width: number;
  readonly height: number;
  readonly area: number;
  /** Round part of its surface and all of it, across, mm. */
  readonly roundLength: number;
  readonly around: number;
}

const SIZES = (radiusMeans: string) => [
  length('radius', radiusMeans, { default: 10, also: ['profile_radius'] }),
  length('sides', 'sides of the frame, one after the other, on the line the edging follows', {
    default: [300, 200, 300, 200],
    isList: true,
    also: ['side_lengths', 'lengths'],
  }),
  angle(
    'corner_angles_deg',
    'angle inside the frame at the end of each side; one for all, or left out for 180 (n - 2) / n',
    { isList: true, over: 0, most: 359 },
  ),
  choice('line', 'edge of the edging that the sides are measured on', ['outside', 'middle', 'inside']),
  choice('closed', 'whether the last side meets the first', ['yes', 'no']),
  length('ring_radius', 'in place of sides: the line is a circle of this radius'),
];

function developEdging(sizes: Sizes, name: string, profile: Profile): Result<Development> {
  const { width, area } = profile;
  const shift = { outside: 0, middle: width / 2, inside: width }[sizes.word('line')] ?? 0;
  const figures: Record<string, Figure> = {
    profile_width: mm(width),
    profile_height: mm(profile.height),
    profile_area: mm2(area),
    profile_arc: mm(profile.roundLength),
    profile_perimeter: mm(profile.around),
  };
  if (sizes.has('ring_radius')) {
    const outer = sizes.num('ring_radius') + shift;
    if (!(outer >= width))
      return fail(
        'shape/sizes',
        `Edging ${width} mm wide does not go round so small a circle: make ring_radius larger.`,
      );
    const middle = outer - width / 2;
    const long = 2 * Math.PI * middle;
    return ok({
      measures: measures({
        ...figures,
        outside_length: mm(2 * Math.PI * outer),
        inside_length: mm(2 * Math.PI * (outer - width)),
        middle_length: mm(long),
        total_length: mm(long),
        squash_inside_percent: plain((50 * width) / middle, '%'),
        volume: mm3(area * long),
      }),
      pieces: [
        piece(
          name,
          [
            side('outside', vec2(0, 0), vec2(long, 0)),
            side('end', vec2(long, 0), vec2(long, width), { seam: 'joint' }),
            side('inside', vec2(long, width), vec2(0, width)),
            side('start', vec2(0, width), vec2(0, 0), { seam: 'joint' }),
          ],
          { bend: rolled(middle) },
        ),
      ],
    });
  }
  const sides = sizes.row('sides');
  const n = sides.length;
  const isClosed = sizes.word('closed') === 'yes';
  if (isClosed && n < 3)
    return fail('shape/sizes', 'A closed frame has at least three sides: give more, or closed=no.');
  const given = sizes.has('corner_angles_deg') ? sizes.row('corner_angles_deg') : [(180 * (n - 2)) / n];
  const corners = isClosed ? n : n - 1;
  if (given.length !== 1 && given.length !== corners)
    return fail('shape/sizes', `corner_angles_deg takes one angle or ${corners}, one for the end of each side.`);
  const cornerDeg = Array.from({ length: corners }, (_, i) => given[given.length === 1 ? 0 : i]);
  if (isClosed && Math.abs(cornerDeg.reduce((sum, one) => sum + one, 0) - 180 * (n - 2)) > 1e-6)
    return fail(
      'shape/sizes',
      `The angles inside a frame of ${n} sides add up to ${180 * (n - 2)} degrees: change corner_angles_deg.`,
    );
  const cot = (deg: number): number => 1 / Math.tan(rad(deg) / 2);
  // Ends of side i: the corner before it and the one after; an open end is square.
  const before = (i: number): number => (i > 0 ? cornerDeg[i - 1] : isClosed ? cornerDeg[n - 1] : 180);
  const after = (i: number): number => (i < corners ? cornerDeg[i] : 180);
  const outside = sides.map((one, i) => one + shift * (cot(before(i)) + cot(after(i))));
  const inside = outside.map((one, i) => one - width * (cot(before(i)) + cot(after(i))));
  if (![...outside, ...inside].every((one) => Math.abs(one) <= 2 * MOST_LENGTH_MM))
    return fail(
      'shape/sizes',
      'A corner is so sharp that its mitre would be longer than any edging: make its angle larger.',
    );
  if (inside.some((one, i) => one < 0 || outside[i] < 0))
    return fail('shape/sizes', `Edging ${width} mm wide does not fit on sides so short: make the sides longer.`);
  const isPointed = inside.map((one) => one < 1e-9 * width);
  const long = outside.map((one, i) => Math.max(one, inside[i]));
  const pieces = sides.map((_, i) => {
    const [a, b] = [vec2(0, 0), vec2(outside[i], 0)];
    const start = vec2(width * cot(before(i)), width);
    const end = vec2(start.x + inside[i], width);
    const seams = {
      end: i < corners ? `corner ${i + 1}` : undefined,
      start: i > 0 ? `corner ${i}` : isClosed ? `corner ${n}` : undefined,
    };
    return piece(`side ${i + 1}`, [
      side('outside', a, b),
      side('end', b, end, { seam: seams.end }),
      ...(isPointed[i] ? [] : [side('inside', end, start)]),
      side('start', isPointed[i] ? end : start, a, { seam: seams.start }),
    ]);
  });
  const total = outside.map((one, i) => (one + inside[i]) / 2).reduce((sum, one) => sum + one, 0);
  return ok({
    pieces,
    measures: measures({
      ...figures,
      cut_lengths: mm(long),
      outside_lengths: mm(outside),
      inside_lengths: mm(inside),
      long_point_lengths: mm(long),
      short_point_lengths: mm(outside.map((one, i) => Math.min(one, inside[i]))),
      mitre_angle_deg: plain(90 - cornerDeg[0] / 2, 'deg'),
      mitre_angles_deg: plain(
        cornerDeg.map((one) => 90 - one / 2),
        'deg',
      ),
      cut_length: mm(long[0]),
      total_length: mm(long.reduce((sum, one) => sum + one, 0)),
      middle_length: mm(total),
      outside_perimeter: mm(outside.reduce((sum, one) => sum + one, 0)),
      inside_perimeter: mm(inside.reduce((sum, one) => sum + one, 0)),
      mitre_cut_width: mm(width / Math.sin(rad(cornerDeg[0]) / 2)),
      covered_area: mm2(total * width),
      volume: mm3(area * total),
      frame_turn_deg: degrees(cornerDeg.reduce((sum, one) => sum + (180 - one) / DEG, 0)),
    }),
  });
}

export const HALF_ROUND_EDGING: ShapeKind = {
  name: 'half_round_edging',
  also: ['half_round'],
  says: 'Half-round edging round a frame or a circle: lengths and mitres.',
  sizes: SIZES('radius of the half round; it covers twice as much'),
  develop: (sizes) => {
    const r = sizes.num('radius');
    return developEdging(sizes, 'half round', {
      width: 2 * r,
      height: r,
      area: (Math.PI * r * r) / 2,
      roundLength: Math.PI * r,
      around: (Math.PI + 2) * r,
    });
  },
};

export const QUARTER_ROUND_EDGING: ShapeKind = {
  name: 'quarter_round_edging',
  also: ['quarter_round'],
  says: 'Quarter-round edging round a frame or a circle: lengths and mitres.',
  sizes: SIZES('radius of the quarter round, which is its width and its height'),
  develop: (sizes) => {
    const r = sizes.num('radius');
    return developEdging(sizes, 'quarter round', {
      width: r,
      height: r,
      area: (Math.PI * r * r) / 4,
      roundLength: (Math.PI * r) / 2,
      around: (Math.PI / 2 + 2) * r,
    });
  },
};
