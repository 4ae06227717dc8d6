import { fail, ok, type Result } from '../../base/result.ts';
import { rad, vec2, vec3, type Vec2 } from '../../geom/vec.ts';
import { curve } from '../../geom/outline-curve.ts';
import type { ShapeEdge, ShapePatch } from '../../model/shape.ts';
import { integrate } from '../../geom/integrate.ts';
import { degrees, measures, mm, mm2, mm3, percent } from './measures.ts';
import { edge, piece, rolled, side } from './pieces.ts';
import { bendWarnings, rolledSheet, warning } from './rolled-sheet.ts';
import type { Development, ShapeKind } from './shape-kind.ts';
import { angle, count, K, length, surface, THICKNESS } from './size-fields.ts';
import type { Sizes } from './sizes.ts';

const LATITUDES = [0, 15, 30, 45, 60, 75];

const SIZES = [
  length('radius', 'radius of the sphere, of the surface that is named', { default: 100 }),
  count('gores', 'gores all round', { default: 12, least: 3, also: ['number_of_gores'] }),
  angle('latitude_deg', 'latitudes at which widths are given', {
    default: LATITUDES,
    isList: true,
    least: -90,
    most: 90,
  }),
  angle('from_latitude_deg', 'where gores begin; 0 for a dome', { default: -90, least: -90, most: 89 }),
  angle('to_latitude_deg', 'where gores end; less than 90 leaves a hole', { default: 90, least: -89, most: 90 }),
  { ...THICKNESS },
  K,
  surface('outside'),
];

interface Gores {
  readonly radius: number;
  readonly gores: number;
  readonly from: number;
  readonly to: number;
  readonly warnings: readonly ReturnType<typeof warning>[];
}

function goresOf(sizes: Sizes): Result<Gores> {
  const sheet = rolledSheet(sizes);
  const radius = sizes.num('radius') + sheet.toNeutral;
  if (!(sizes.num('radius') + sheet.toInside >= 0) || !(radius > 0))
    return fail('shape/too-thick', 'The sheet does not fit into the sphere: take a thinner sheet or a larger radius.');
  const [from, to] = [rad(sizes.num('from_latitude_deg')), rad(sizes.num('to_latitude_deg'))];
  if (!(to > from)) return fail('shape/sizes', 'to_latitude_deg must be more than from_latitude_deg.');
  return ok({ radius, gores: sizes.num('gores'), from, to, warnings: bendWarnings(sheet, radius) });
}

/** The outline of a gore whose half width at a latitude is `half`, y along its middle; pointed at a pole. */
function goreOutline(
  { radius, from, to }: Gores,
  half: (latitude: number) => number,
  extra: { readonly trueLengthMm: number; readonly bevelDeg: readonly [number, number, number] },
): ShapeEdge[] {
  const at = (latitude: number, sign: 1 | -1): Vec2 => vec2(sign * halfAt(latitude), radius * latitude);
  const isPole = (latitude: number): boolean => Math.abs(Math.abs(latitude) - Math.PI / 2) < 1e-12;
  const halfAt = (latitude: number): number => (isPole(latitude) ? 0 : half(latitude));
  const [low, middle, high] = extra.bevelDeg;
  return [
    ...(isPole(from) ? [] : [side('lower rim', at(from, -1), at(from, 1))]),
    edge(
      'right edge',
      curve((t) => at(t, 1), from, to),
      { ...extra, seam: 'gore seam' },
    ),
    ...(isPole(to) ? [] : [side('upper rim', at(to, 1), at(to, -1))]),
    edge(
      'left edge',
      curve((t) => at(t, -1), to, from),
      { ...extra, bevelDeg: [high, middle, low], seam: 'gore seam' },
    ),
  ];
}

/**
 * Gores of a sphere: as wide at each latitude as the parallel they cover, w = 2 pi R cos(latitude) / n, along a middle line in true length
 * (mensuration tables). Flat and finished area are alike for this law; the edges are longer than the meridian and are gathered.
 */
export const SPHERE_GORES: ShapeKind = {
  name: 'sphere_gores',
  also: ['gores', 'gore'],
  says: 'Gores of a sphere or dome: widths as the parallels they cover, to be formed round.',
  sizes: SIZES,
  develop: (sizes) => {
    const read = goresOf(sizes);
    if (!read.ok) return read;
    const { radius, gores, from, to, warnings } = read.value;
    const half = (latitude: number): number => (Math.PI * radius * Math.cos(latitude)) / gores;
    const meridian = radius * (to - from);
    const made = piece('gore', goreOutline(read.value, half, { trueLengthMm: meridian, bevelDeg: [0, 0, 0] }), {
      quantity: gores,
      bend: { kind: 'formed', leastRadiusMm: radius, greatestRadiusMm: radius },
    });
    const edgeLength = integrate(
      (t) => Math.sqrt(radius ** 2 + ((Math.PI * radius * Math.sin(t)) / gores) ** 2),
      from,
      to,
    );
    const zone = 2 * Math.PI * radius ** 2 * (Math.sin(to) - Math.sin(from));
    const latitudes = sizes.row('latitude_deg').map(rad);
    return ok<Development>({
      measures: measures({
        gore_length: mm(meridian),
        widths: mm(latitudes.map((t) => 2 * half(t))),
        half_widths: mm(latitudes.map(half)),
        heights_along_gore: mm(latitudes.map((t) => radius * t)),
        greatest_width: mm(2 * half(from <= 0 && to >= 0 ? 0 : Math.abs(from) < Math.abs(to) ? from : to)),
        gore_angle_deg: degrees((2 * Math.PI) / gores),
        gore_area: mm2(zone / gores),
        flat_gore_area_width_law: mm2(made.areaMm2),
        flat_gore_area: mm2(made.areaMm2),
        edge_length: mm(edgeLength),
        edge_excess: mm(edgeLength - meridian),
        edge_excess_percent: percent(100 * (edgeLength / meridian - 1)),
        circumference: mm(2 * Math.PI * radius),
        area: mm2(zone),
        sphere_area: mm2(4 * Math.PI * radius ** 2),
        volume: mm3((4 / 3) * Math.PI * radius ** 3),
      }),
      pieces: [made],
      patches: Array.from({ length: gores }, (_, i): ShapePatch => ({
        piece: 'gore',
        facets: [1 / gores, (to - from) / (2 * Math.PI)],
        solid: (u, v) => {
          const [turn, t] = [(2 * Math.PI * (i + u)) / gores, from + (to - from) * v];
          return vec3(
            radius * Math.cos(t) * Math.cos(turn),
            radius * Math.cos(t) * Math.sin(turn),
            radius * Math.sin(t),
          );
        },
      })),
      warnings: [
        ...warnings,
        ...(edgeLength / meridian - 1 > 0.08
          ? [
              warning(
                'shape/stretch',
                `The edges must be gathered by ${(100 * (1 - meridian / edgeLength)).toFixed(1)} %: use more gores.`,
              ),
            ]
          : []),
      ],
    });
  },
};

/**
 * Gores that bend along the meridian and stay straight across, round the sphere: the faces of an n-sided dome, w = 2 R cos(latitude) tan(180 / n).
 * Each is part of a cylinder, so it is only bent; at an edge two cylinders meet under a turn with sin(turn / 2) = cos(latitude) sin(180 / n).
 */
export const DOME_GORES: ShapeKind = {
  name: 'dome_gores',
  also: ['flat_gores', 'straight_gores'],
  says: 'Gores of an n-sided dome round a sphere, bent one way and straight across.',
  sizes: SIZES,
  develop: (sizes) => {
    const read = goresOf(sizes);
    if (!read.ok) return read;
    const { radius, gores, from, to, warnings } = read.value;
    const tan = Math.tan(Math.PI / gores);
    const half = (latitude: number): number => radius * Math.cos(latitude) * tan;
    const bevel = (latitude: number): number => Math.asin(Math.cos(latitude) * Math.sin(Math.PI / gores));
    const inDeg = (x: number): number => (180 * x) / Math.PI;
    const edgeLength = integrate((t) => radius * Math.sqrt(1 + (tan * Math.sin(t)) ** 2), from, to);
    const made = piece(
      'gore',
      goreOutline(read.value, half, {
        trueLengthMm: edgeLength,
        bevelDeg: [inDeg(bevel(from)), inDeg(bevel((from + to) / 2)), inDeg(bevel(to))],
      }),
      { quantity: gores, bend: rolled(radius) },
    );
    const latitudes = sizes.row('latitude_deg').map(rad);
    return ok<Development>({
      measures: measures({
        gore_length: mm(radius * (to - from)),
        widths: mm(latitudes.map((t) => 2 * half(t))),
        half_widths: mm(latitudes.map(half)),
        heights_along_gore: mm(latitudes.map((t) => radius * t)),
        greatest_width: mm(2 * half(from <= 0 && to >= 0 ? 0 : Math.abs(from) < Math.abs(to) ? from : to)),
        edge_radius_at_equator: mm(radius / Math.cos(Math.PI / gores)),
        ridge_bevel_at_equator_deg: degrees(Math.PI / gores),
        ridge_bevels_deg: degrees(latitudes.map(bevel)),
        edge_length: mm(edgeLength),
        gore_area: mm2(made.areaMm2),
        area: mm2(gores * made.areaMm2),
        gore_angle_deg: degrees((2 * Math.PI) / gores),
      }),
      pieces: [made],
      patches: Array.from({ length: gores }, (_, i): ShapePatch => ({
        piece: 'gore',
        facets: [0, (to - from) / (2 * Math.PI)],
        solid: (u, v) => {
          const [middle, t] = [(2 * Math.PI * i) / gores, from + (to - from) * v];
          const [out, along] = [radius * Math.cos(t), (2 * u - 1) * half(t)];
          return vec3(
            out * Math.cos(middle) - along * Math.sin(middle),
            out * Math.sin(middle) + along * Math.cos(middle),
            radius * Math.sin(t),
          );
        },
        flat: (u, v) => {
          const t = from + (to - from) * v;
          return vec2((2 * u - 1) * half(t), radius * t);
        },
      })),
      warnings,
    });
  },
};
