import { fail, ok } from '../../base/result.ts';
import { bendAllowance, bendDeduction, outsideSetback } from '../../geom/bend-allowance.ts';
import { MM_PER_INCH } from '../../base/format-length.ts';
import { rad, vec2, vec3, type Vec3 } from '../../geom/vec.ts';
import type { ShapePatch } from '../../model/shape.ts';
import { degrees, measures, mm, mm2, percent, plain } from './measures.ts';
import { piece, rolled, side } from './pieces.ts';
import { bendWarnings } from './rolled-sheet.ts';
import type { ShapeKind } from './shape-kind.ts';
import { angle, figure, K, length } from './size-fields.ts';

/** A sheet bent once: allowance angle (r + k t), outside set-back (r + t) tan(angle / 2), deduction twice the set-back less the allowance. */
export const BEND: ShapeKind = {
  name: 'bend',
  also: ['bend_allowance'],
  says: 'Sheet bent once round an inside radius: bend allowance, set-back, deduction and the flat length with both legs.',
  sizes: [
    angle('angle_deg', 'how far it is bent', { default: 90, over: 0, most: 359.9, also: ['bend_angle_deg'] }),
    length('inner_radius', 'radius of the inside', {
      default: 20,
      least: 0,
      also: ['inside_radius', 'bend_radius', 'r'],
    }),
    length('thickness', 'thickness of the sheet', { default: 6, most: 200, also: ['t'] }),
    K,
    length('leg_a', 'outside length of one leg, to where both outsides would meet', {
      default: 100,
      also: ['flange_a'],
    }),
    length('leg_b', 'the same of the other', { default: 100, also: ['flange_b'] }),
    length('width', 'along the bend', { default: 100, also: ['length'] }),
  ],
  develop: (sizes) => {
    const [angleDeg, insideRadius, thickness, neutralFraction, a, b, width] = [
      'angle_deg',
      'inner_radius',
      'thickness',
      'K',
      'leg_a',
      'leg_b',
      'width',
    ].map((name) => sizes.num(name));
    const bend = { angle: rad(angleDeg), insideRadius, thickness, neutralFraction };
    const neutral = insideRadius + neutralFraction * thickness;
    if (!(neutral > 0))
      return fail(
        'shape/sizes',
        'Bent about its inner face round no radius nothing is left of the bend: give an inner_radius or a K over 0.',
      );
    const allowance = bendAllowance(bend);
    // Past a half turn both outsides do not meet: there is no set-back.
    const hasSetback = angleDeg < 180;
    const setback = hasSetback ? outsideSetback(bend) : 0;
    const deduction = hasSetback ? bendDeduction(bend) : 0;
    const straight = [a - setback, b - setback];
    if (straight.some((one) => one < 0))
      return fail('shape/sizes', `The legs must reach past the bend: make both at least ${setback.toFixed(2)} mm.`);
    const flat = straight[0] + straight[1] + allowance;
    const lines = [straight[0], straight[0] + allowance].map((x) => ({
      from: vec2(x, 0),
      to: vec2(x, width),
      angleDeg: 0,
    }));
    return ok({
      measures: measures({
        allowance: mm(allowance),
        bend_allowance: mm(allowance),
        allowance_in: plain(allowance / MM_PER_INCH, 'in'),
        outside_setback: hasSetback ? mm(setback) : undefined,
        outside_setback_in: hasSetback ? plain(setback / MM_PER_INCH, 'in') : undefined,
        inside_setback: hasSetback ? mm(insideRadius * Math.tan(bend.angle / 2)) : undefined,
        deduction: hasSetback ? mm(deduction) : undefined,
        bend_deduction: hasSetback ? mm(deduction) : undefined,
        deduction_in: hasSetback ? plain(deduction / MM_PER_INCH, 'in') : undefined,
        flat_length: mm(flat),
        flat_length_in: plain(flat / MM_PER_INCH, 'in'),
        neutral_radius: mm(neutral),
        outer_radius: mm(insideRadius + thickness),
        outer_arc: mm(bend.angle * (insideRadius + thickness)),
        inner_arc: mm(bend.angle * insideRadius),
        outer_strain_percent: percent((100 * (1 - neutralFraction) * thickness) / neutral),
        inner_strain_percent: percent((-100 * neutralFraction * thickness) / neutral),
        included_angle_deg: degrees(Math.PI - bend.angle),
        area: mm2(flat * width),
      }),
      pieces: [
        piece(
          'blank',
          [
            side('lower side', vec2(0, 0), vec2(flat, 0)),
            side('end', vec2(flat, 0), vec2(flat, width)),
            side('upper side', vec2(flat, width), vec2(0, width)),
            side('start', vec2(0, width), vec2(0, 0)),
          ],
          { folds: lines, bend: rolled(neutral) },
        ),
      ],
      patches: bentSheet({ legs: [straight[0], straight[1]], radius: neutral, turn: bend.angle, width }),
      warnings: bendWarnings({ thickness, k: neutralFraction }, neutral),
    });
  },
};

interface BentSheet {
  /** From either end to where the bend begins, mm, >= 0. */
  readonly legs: readonly [number, number];
  /** Of the neutral surface, mm, and how far it turns, radians. */
  readonly radius: number;
  readonly turn: number;
  readonly width: number;
}

/** The neutral surface: the bend about the z axis from +x on, both legs straight on from it, the outside away from the axis. */
function bentSheet({ legs: [first, second], radius, turn, width }: BentSheet): ShapePatch[] {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const round = radius * turn;
  const leg = (u0: number, long: number, at: (along: number, z: number) => Vec3): ShapePatch => ({
    piece: 'blank',
    facets: [0, 0],
    cut: [],
    solid: (u, v) => at(long * u, width * v),
    flat: (u, v) => vec2(u0 + long * u, width * v),
  });
  return [
    ...(first > 0 ? [leg(0, first, (along, z) => vec3(radius, along - first, z))] : []),
    {
      piece: 'blank',
      facets: [turn / (2 * Math.PI), 0],
      cut: [],
      solid: (u, v) => vec3(radius * Math.cos(turn * u), radius * Math.sin(turn * u), width * v),
      flat: (u, v) => vec2(first + round * u, width * v),
    },
    ...(second > 0
      ? [leg(first + round, second, (along, z) => vec3(radius * c - along * s, radius * s + along * c, z))]
      : []),
  ];
}

/** The rule of aviation manuals, (0.0173 R + 0.0078 T) N with N in degrees, and the neutral fraction it implies. */
export const EMPIRICAL_BEND: ShapeKind = {
  name: 'empirical_bend',
  also: ['aviation_bend'],
  says: 'Bend allowance by the rule of aviation manuals, (0.0173 R + 0.0078 T) N, and the neutral fraction it implies.',
  sizes: [
    length('R', 'radius of the inside', { default: 20, least: 0, also: ['inner_radius', 'radius'] }),
    length('T', 'thickness of the sheet', { default: 6, also: ['thickness'] }),
    figure('N', 'how far it is bent', 'deg', {
      default: 90,
      over: 0,
      most: 359.9,
      also: ['angle_deg', 'bend_angle_deg'],
    }),
  ],
  develop: (sizes) => {
    const [R, T, N] = ['R', 'T', 'N'].map((name) => sizes.num(name));
    const allowance = (0.0173 * R + 0.0078 * T) * N;
    return ok({
      measures: measures({
        allowance: mm(allowance),
        'allowance_0.01743_form': mm((0.01743 * R + 0.0078 * T) * N),
        // What the thickness counts for beside the radius, in the form whose 0.01743 is nearly a degree in radians.
        implied_K: plain(0.0078 / 0.01743),
        implied_K_of_allowance: plain((allowance / rad(N) - R) / T),
      }),
    });
  },
};

/** What bending does to the skins: outside (1 - k) t over the neutral radius, t / (2 r_mid) for k 0.5. */
export const BEND_STRAIN: ShapeKind = {
  name: 'bend_strain',
  also: ['bending_strain'],
  says: 'Stretch of the outer skin of a bent sheet, and the inside radius for a stretch that is allowed.',
  sizes: [
    length('thickness', 'thickness of the sheet', { default: 10, most: 200, also: ['t'] }),
    length('inner_radius', 'radii of the inside', {
      default: [10, 20, 45, 95],
      isList: true,
      least: 0,
      also: ['inside_radius', 'r'],
    }),
    K,
    figure('limit_percent', 'stretch that is allowed', '%', { default: 10, over: 0, most: 1000 }),
  ],
  develop: (sizes) => {
    const [t, k] = [sizes.num('thickness'), sizes.num('K')];
    const radii = sizes.row('inner_radius');
    if (radii.some((r) => !(r + k * t > 0)))
      return fail(
        'shape/sizes',
        'Bent about its inner face round no radius the stretch has no bound: give an inner_radius or a K over 0.',
      );
    const neutral = radii.map((r) => r + k * t);
    const radiusFor = (share: number): number => ((1 - k) * t) / share - k * t;
    return ok({
      measures: measures({
        outer_strain_percent: percent(neutral.map((r) => (100 * (1 - k) * t) / r)),
        inner_squash_percent: percent(neutral.map((r) => (100 * k * t) / r)),
        neutral_radius: mm(neutral),
        inner_radius_for_5_percent: mm(radiusFor(0.05)),
        inner_radius_for_10_percent: mm(radiusFor(0.1)),
        inner_radius_for_20_percent: mm(radiusFor(0.2)),
        inner_radius_for_25_percent: mm(radiusFor(0.25)),
        inner_radius_for_limit: mm(radiusFor(sizes.num('limit_percent') / 100)),
      }),
    });
  },
};
