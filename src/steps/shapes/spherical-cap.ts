import { fail, ok } from '../../base/result.ts';
import { rad, vec2, vec3 } from '../../geom/vec.ts';
import { arc } from '../../geom/outline.ts';
import { curve } from '../../geom/outline-curve.ts';
import type { ShapeBend } from '../../model/shape.ts';
import { degrees, measures, mm, mm2, mm3, percent, plain } from './measures.ts';
import { edge, piece } from './pieces.ts';
import { bendWarnings, rolledSheet, warning } from './rolled-sheet.ts';
import type { ShapeKind } from './shape-kind.ts';
import { angle, count, K, length, surface, THICKNESS } from './size-fields.ts';

/**
 * Spherical cap: area 2 pi R² (1 - cos a) = 2 pi R h, its integrated curvature is area / R² (Gauss and Bonnet). The disc that keeps the
 * distance from the pole has radius R a and so too long a rim; no flat disc does with less than a ratio a / sin a of its greatest to its least
 * scale (J. Milnor, A problem in cartography, 1969).
 */
export const SPHERICAL_CAP: ShapeKind = {
  name: 'spherical_cap',
  also: ['cap', 'dome_cap'],
  says: 'Cap of a sphere: area, curvature and how much its rim must be gathered, as one disc or as petals.',
  sizes: [
    length(
      'radius',
      'radius of the sphere, of the surface that is named; with cap_half_angle_deg, cap_height or base_radius',
      {
        also: ['sphere_radius'],
      },
    ),
    angle('cap_half_angle_deg', 'from the pole to the rim, seen from the centre', {
      over: 0,
      most: 180,
      also: ['half_angle_deg'],
    }),
    length('cap_height', 'from rim to pole', { also: ['height', 'rise', 'sagitta'] }),
    length('base_radius', 'radius of the rim; with radius or cap_height', { also: ['rim_radius'] }),
    count('petals', 'darts that part the disc into petals; 1 for a whole disc', { default: 1, most: 200 }),
    { ...THICKNESS },
    K,
    surface('outside'),
  ],
  develop: (sizes) => {
    const has = ['radius', 'cap_half_angle_deg', 'cap_height', 'base_radius'].filter((name) => sizes.has(name));
    const given =
      has.length === 0
        ? ['radius', 'cap_half_angle_deg']
        : has.length === 1 && has[0] === 'radius'
          ? ['radius', 'cap_half_angle_deg']
          : has;
    if (given.length !== 2)
      return fail('shape/sizes', 'Give two of radius, cap_half_angle_deg, cap_height and base_radius.');
    const num = (name: string): number =>
      sizes.has(name) ? sizes.num(name) : name === 'radius' ? 100 : name === 'cap_half_angle_deg' ? 30 : NaN;
    const is = (a: string, b: string): boolean => given.includes(a) && given.includes(b);
    let [radius, half] = [NaN, NaN];
    if (is('radius', 'cap_half_angle_deg')) [radius, half] = [num('radius'), rad(num('cap_half_angle_deg'))];
    else if (is('radius', 'cap_height')) {
      radius = num('radius');
      if (!(num('cap_height') <= 2 * radius))
        return fail('shape/sizes', 'cap_height must be at most twice the radius.');
      half = Math.acos(1 - num('cap_height') / radius);
    } else if (is('radius', 'base_radius')) {
      radius = num('radius');
      if (!(num('base_radius') <= radius)) return fail('shape/sizes', 'base_radius must be at most the radius.');
      half = Math.asin(num('base_radius') / radius);
    } else if (is('cap_height', 'base_radius')) {
      radius = (num('base_radius') ** 2 + num('cap_height') ** 2) / (2 * num('cap_height'));
      half = 2 * Math.atan(num('cap_height') / num('base_radius'));
    } else if (is('cap_half_angle_deg', 'cap_height')) {
      half = rad(num('cap_half_angle_deg'));
      radius = num('cap_height') / (1 - Math.cos(half));
    } else {
      half = rad(num('cap_half_angle_deg'));
      if (Math.sin(half) < 1e-9)
        return fail('shape/sizes', 'A whole sphere has no rim: make cap_half_angle_deg less than 180.');
      radius = num('base_radius') / Math.sin(half);
    }
    // The rim is cut square to the wall, so every surface of the sheet goes as far round.
    const sheet = rolledSheet(sizes);
    if (!(radius + sheet.toInside >= 0) || !(radius + sheet.toNeutral > 0))
      return fail(
        'shape/too-thick',
        'The sheet does not fit into the sphere: take a thinner sheet or a larger radius.',
      );
    radius += sheet.toNeutral;
    const [sin, versine] = [Math.sin(half), 2 * Math.sin(half / 2) ** 2];
    const area = 2 * Math.PI * radius ** 2 * versine;
    const disc = Math.PI * (radius * half) ** 2;
    const [rim, flatRim] = [2 * Math.PI * radius * sin, 2 * Math.PI * radius * half];
    const petals = sizes.num('petals');
    const reach = radius * half;
    const origin = vec2(0, 0);
    // A petal is as wide at each distance from the pole as the circle it covers, from the tip upward.
    const halfWidth = (s: number): number => (Math.PI * radius * Math.sin(s / radius)) / petals;
    const bend: ShapeBend = { kind: 'formed', leastRadiusMm: radius, greatestRadiusMm: radius };
    const isWhole = petals === 1;
    const ratio = half < 1e-9 ? 1 : half / Math.max(sin, 1e-300);
    const piece1 = isWhole
      ? piece('disc', [edge('rim', arc(origin, reach, 0, 2 * Math.PI), { trueLengthMm: rim })], {
          bend,
        })
      : piece(
          'petal',
          [
            edge(
              'right edge',
              curve((s) => vec2(halfWidth(s), s), 0, reach),
              { seam: 'petal seam', trueLengthMm: reach },
            ),
            ...(halfWidth(reach) > 1e-9 * reach
              ? [edge('rim', { kind: 'line', from: vec2(halfWidth(reach), reach), to: vec2(-halfWidth(reach), reach) })]
              : []),
            edge(
              'left edge',
              curve((s) => vec2(-halfWidth(s), s), reach, 0),
              { seam: 'petal seam', trueLengthMm: reach },
            ),
          ],
          { quantity: petals, bend },
        );
    return ok({
      measures: measures({
        cap_area: mm2(area),
        area: mm2(area),
        equidistant_disc_area: mm2(disc),
        equidistant_disc_radius: mm(reach),
        area_excess_percent: percent(100 * (disc / area - 1)),
        integrated_curvature_deg: degrees(2 * Math.PI * versine),
        rim_length: mm(rim),
        equidistant_rim_length: mm(flatRim),
        rim_excess: mm(flatRim - rim),
        rim_excess_percent: percent(100 * (flatRim / rim - 1)),
        radius: mm(radius),
        cap_half_angle_deg: degrees(half),
        cap_height: mm(radius * versine),
        base_radius: mm(radius * sin),
        arc_length: mm(2 * reach),
        pole_to_rim: mm(reach),
        equal_area_disc_radius: mm(radius * Math.sqrt(2 * versine)),
        least_scale_ratio: plain(ratio),
        volume: mm3((Math.PI / 3) * (radius * versine) ** 2 * (3 * radius - radius * versine)),
        petal_rim_width: isWhole ? undefined : mm(2 * halfWidth(reach)),
      }),
      pieces: [piece1],
      patches: Array.from({ length: petals }, (_, i) => ({
        piece: isWhole ? 'disc' : 'petal',
        facets: [1 / petals, half / (2 * Math.PI)] as const,
        solid: (u: number, v: number) => {
          const [turn, t] = [(2 * Math.PI * (i + u)) / petals, half * (1 - v)];
          return vec3(
            radius * Math.sin(t) * Math.cos(turn),
            radius * Math.sin(t) * Math.sin(turn),
            radius * Math.cos(t),
          );
        },
      })),
      warnings: [
        ...bendWarnings(sheet, radius),
        ...(isWhole && ratio - 1 > 0.08
          ? [
              warning(
                'shape/stretch',
                `One disc must change its scale by at least ${(100 * (ratio - 1)).toFixed(1)} %: part it into petals.`,
              ),
            ]
          : []),
      ],
    });
  },
};
