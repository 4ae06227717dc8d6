import { fail, ok } from '../../base/result.ts';
import { rad } from '../../geom/vec.ts';
import { degrees, measures, mm, mm2, mm3 } from './measures.ts';
import { bendWarnings, rolledSheet } from './rolled-sheet.ts';
import type { ShapeKind } from './shape-kind.ts';
import { angle, choice, count, K, length, surface, THICKNESS } from './size-fields.ts';
import { developBand, type Band } from './surface-of-zones.ts';

/**
 * A sphere as bands between parallels, each part of a cone: rims on the sphere (chord, inside it) or the band touching the sphere at its
 * middle latitude (tangent, outside it). A zone's own area is 2 pi R h (Archimedes); a chord band has slant 2 R sin(step / 2) and the arcs of
 * its sector the radii R cos(latitude) / sin(middle latitude).
 */
export const SPHERE_ZONES: ShapeKind = {
  name: 'sphere_zones',
  also: ['zones', 'sphere_bands'],
  says: 'Sphere or dome as bands between parallels, each part of a cone.',
  sizes: [
    length('radius', 'radius of the sphere, of the surface that is named', { default: 100 }),
    count('zones', 'bands between both latitudes, evenly spread', { default: 6, most: 200, also: ['bands'] }),
    angle('from_latitude_deg', 'where the first band begins', {
      default: 0,
      least: -90,
      most: 89,
      also: ['lower_latitude_deg', 'latitude_1_deg', 'lat1_deg'],
    }),
    angle('to_latitude_deg', 'where the last one ends', {
      default: 90,
      least: -89,
      most: 90,
      also: ['upper_latitude_deg', 'latitude_2_deg', 'lat2_deg'],
    }),
    choice('fit', 'chord: rims on the sphere; tangent: middles on it', ['chord', 'tangent']),
    { ...THICKNESS },
    K,
    surface('outside'),
  ],
  develop: (sizes) => {
    const sheet = rolledSheet(sizes);
    const radius = sizes.num('radius') + sheet.toNeutral;
    if (!(sizes.num('radius') + sheet.toInside >= 0) || !(radius > 0))
      return fail(
        'shape/too-thick',
        'The sheet does not fit into the sphere: take a thinner sheet or a larger radius.',
      );
    const [from, to, zones] = [
      rad(sizes.num('from_latitude_deg')),
      rad(sizes.num('to_latitude_deg')),
      sizes.num('zones'),
    ];
    if (!(to > from)) return fail('shape/sizes', 'to_latitude_deg must be more than from_latitude_deg.');
    const step = (to - from) / zones;
    // Neighbours meet where tangents do, at the same latitudes but farther out.
    const isTangent = sizes.word('fit') === 'tangent';
    if (isTangent && step >= rad(120))
      return fail('shape/sizes', 'Tangent bands this wide do not meet: use more zones.');
    const reach = radius / (isTangent ? Math.cos(step / 2) : 1);
    const latitude = (i: number): number => (i === zones ? to : from + i * step);
    const ring = (i: number): { r: number; z: number } => {
      const t = latitude(i);
      const isPole = Math.abs(Math.abs(t) - Math.PI / 2) < 1e-12;
      return { r: isPole ? 0 : reach * Math.cos(t), z: reach * Math.sin(t) };
    };
    const bevel = (180 / Math.PI) * (step / 2);
    const bands = Array.from({ length: zones }, (_, i) => {
      const [a, b] = [ring(i), ring(i + 1)];
      const band: Band = { r0: a.r, z0: a.z, r1: b.r, z1: b.z };
      return developBand(
        `zone ${i + 1}`,
        band,
        { lower: i === 0 ? undefined : `rim ${i}`, upper: i + 1 === zones ? undefined : `rim ${i + 1}` },
        bevel,
      );
    });
    const latitudes = Array.from({ length: zones + 1 }, (_, i) => latitude(i));
    return ok({
      measures: measures({
        zone_latitudes_deg: degrees(latitudes),
        rim_radii: mm(latitudes.map((_, i) => ring(i).r)),
        rim_lengths: mm(latitudes.map((_, i) => 2 * Math.PI * ring(i).r)),
        zone_slants: mm(bands.map(({ slant }) => slant)),
        slant: mm(bands[0].slant),
        sector_angle_deg: degrees(bands[0].angle),
        outer_radius: plainRadii([bands[0].outer], true),
        inner_radius: plainRadii([bands[0].inner], true),
        zone_area: mm2(2 * Math.PI * radius ** 2 * (Math.sin(latitude(1)) - Math.sin(latitude(0)))),
        zone_flat_area: mm2(bands[0].area),
        zone_height: mm(radius * (Math.sin(latitude(1)) - Math.sin(latitude(0)))),
        zone_outer_radii: plainRadii(bands.map(({ outer }) => outer)),
        zone_inner_radii: plainRadii(bands.map(({ inner }) => inner)),
        zone_angles_deg: degrees(bands.map((one) => one.angle)),
        zone_flat_areas: mm2(bands.map(({ area }) => area)),
        zone_areas: mm2(
          bands.map((_, i) => 2 * Math.PI * radius ** 2 * (Math.sin(latitude(i + 1)) - Math.sin(latitude(i)))),
        ),
        tangent_radii: plainRadii(
          bands.map((_, i) => radius / Math.abs(Math.tan((latitude(i) + latitude(i + 1)) / 2))),
        ),
        rim_bevel_deg: degrees(step / 2),
        total_flat_area: mm2(bands.reduce((sum, { area }) => sum + area, 0)),
        area: mm2(2 * Math.PI * radius ** 2 * (Math.sin(to) - Math.sin(from))),
        greatest_gap: mm(isTangent ? reach - radius : radius * (1 - Math.cos(step / 2))),
        volume: mm3((4 / 3) * Math.PI * radius ** 3),
      }),
      pieces: bands.map((one) => one.piece),
      patches: bands.map(({ patch }) => patch),
      warnings: bendWarnings(sheet, radius),
    });
  },
};

/** A radius without end is given as 0: the band is a straight strip. */
function plainRadii(radii: readonly number[], isOne = false) {
  const finite = radii.map((one) => (Number.isFinite(one) ? one : 0));
  return mm(isOne ? finite[0] : finite);
}
