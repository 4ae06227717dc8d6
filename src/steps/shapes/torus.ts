import { fail, ok } from '../../base/result.ts';
import { rad, vec2, vec3 } from '../../geom/vec.ts';
import { arc } from '../../geom/outline.ts';
import { curve } from '../../geom/outline-curve.ts';
import type { ShapePatch, ShapePiece } from '../../model/shape.ts';
import { degrees, measures, mm, mm2, mm3, plain } from './measures.ts';
import { edge, piece, rolled, side } from './pieces.ts';
import { bendWarnings, rolledSheet } from './rolled-sheet.ts';
import type { ShapeKind } from './shape-kind.ts';
import { choice, count, K, length, surface, thetas, THICKNESS } from './size-fields.ts';
import { developBand } from './surface-of-zones.ts';

const MAJOR = length('major_radius', 'from the axis to the middle of the tube', {
  default: 100,
  also: ['centre_radius', 'center_radius', 'ring_radius'],
});
const minor = (first: number) =>
  length('minor_radius', 'radius of the tube', { default: first, also: ['tube_radius'] });

const torusFigures = (major: number, tube: number) => ({
  torus_area: mm2(4 * Math.PI ** 2 * major * tube),
  torus_volume: mm3(2 * Math.PI ** 2 * major * tube ** 2),
  outer_diameter: mm(2 * (major + tube)),
  inner_diameter: mm(2 * (major - tube)),
});

const ORIGIN = vec2(0, 0);

/** Torus stacked of flat rings: at height z a ring lies between R - sqrt(r² - z²) and R + sqrt(r² - z²) (Pappus for area and volume). */
export const TORUS_LAYERS: ShapeKind = {
  name: 'torus_layers',
  also: ['layered_torus'],
  says: 'Torus stacked of flat rings of sheet, to be sanded or filled round.',
  sizes: [
    MAJOR,
    minor(30),
    length('layer', 'thickness of the sheet', { default: 10, also: ['layer_thickness', 'thickness'] }),
    choice('rule', 'where a layer has its size: larger leaves foam to sand off, smaller leaves hollows to fill', [
      'larger',
      'middle',
      'smaller',
    ]),
  ],
  develop: (sizes) => {
    const [major, tube, layer] = ['major_radius', 'minor_radius', 'layer'].map((name) => sizes.num(name));
    if (!(major >= tube))
      return fail(
        'shape/sizes',
        'major_radius must be at least minor_radius: a torus that runs through itself has no rings.',
      );
    const layers = Math.ceil((2 * tube) / layer - 1e-9);
    if (layers > 1000) return fail('shape/sizes', 'There would be more than 1000 layers: make layer thicker.');
    // The stack is as high as its sheets, its middle in the middle of the tube.
    const z = (i: number): number => (i - layers / 2) * layer;
    const rule = sizes.word('rule');
    const halfAt = (height: number): number => Math.sqrt(Math.max(0, (tube - height) * (tube + height)));
    const halfOf = (i: number): number => {
      const [a, b] = [z(i), z(i + 1)];
      const nearest = a < 0 && b > 0 ? 0 : Math.min(Math.abs(a), Math.abs(b));
      const farthest = Math.max(Math.abs(a), Math.abs(b));
      return halfAt(rule === 'larger' ? nearest : rule === 'smaller' ? farthest : (a + b) / 2);
    };
    const halves = Array.from({ length: layers }, (_, i) => halfOf(i));
    const pieces: ShapePiece[] = halves.flatMap((half, i) =>
      half <= 1e-9 * tube
        ? []
        : [
            piece(
              `layer ${i + 1}`,
              [edge('outer', arc(ORIGIN, major + half, 0, 2 * Math.PI))],
              major - half > 1e-9 * major
                ? { holes: [[edge('inner', arc(ORIGIN, major - half, 0, -2 * Math.PI))]] }
                : {},
            ),
          ],
    );
    const stacked = pieces.reduce((sum, { areaMm2 }) => sum + areaMm2 * layer, 0);
    const volume = 2 * Math.PI ** 2 * major * tube ** 2;
    return ok({
      measures: measures({
        layers: plain(layers),
        outer_radii: mm(halves.map((half) => major + half)),
        inner_radii: mm(halves.map((half) => major - half)),
        layer_heights: mm(halves.map((_, i) => z(i))),
        layer_areas: mm2(halves.map((half) => 4 * Math.PI * major * half)),
        stacked_height: mm(layers * layer),
        stacked_volume: mm3(stacked),
        volume: mm3(volume),
        sanded_volume: mm3(stacked - volume),
        area: mm2(4 * Math.PI ** 2 * major * tube),
        ...torusFigures(major, tube),
      }),
      pieces,
    });
  },
};

/**
 * Torus skin of straight tube pieces, mitred like an elbow that closes: each is 2 (R + r cos theta) tan(180 / n) long at theta. A skin formed
 * round has the widths of its arcs instead, 2 pi (R + r cos theta) / n.
 */
export const TORUS_GORES: ShapeKind = {
  name: 'torus_gores',
  also: ['torus_skin', 'torus_segments'],
  says: 'Skin of a torus as straight tube pieces with mitred joints, or as gores formed round.',
  sizes: [
    MAJOR,
    length('minor_radius', 'radius of the tube, of the surface that is named', { default: 30, also: ['tube_radius'] }),
    count('gores', 'pieces all round', { default: 12, least: 3, also: ['segments', 'pieces'] }),
    choice('fit', 'straight: pieces of straight tube; round: as wide as the arcs they cover', ['straight', 'round']),
    thetas([0, 30, 60, 90, 120, 150, 180]),
    { ...THICKNESS },
    K,
    surface('outside'),
  ],
  develop: (sizes) => {
    const sheet = rolledSheet(sizes);
    const [major, gores] = [sizes.num('major_radius'), sizes.num('gores')];
    const tube = sizes.num('minor_radius') + sheet.toNeutral;
    if (!(sizes.num('minor_radius') + sheet.toInside >= 0) || !(tube > 0))
      return fail('shape/too-thick', 'The sheet does not fit into the tube: take a thinner sheet or a larger tube.');
    if (!(major > Math.max(tube, sizes.num('minor_radius') + sheet.toOutside)))
      return fail('shape/sizes', 'major_radius must be more than minor_radius.');
    const isStraight = sizes.word('fit') === 'straight';
    const step = Math.PI / gores;
    const factor = isStraight ? Math.tan(step) : step;
    const half = (theta: number): number => (major + tube * Math.cos(theta)) * factor;
    const long = 2 * Math.PI * tube;
    // The seam lies inside, where it is shortest; x runs along the seam's way round the tube.
    const at = (sign: 1 | -1) => (s: number) => vec2(long * s, sign * half(Math.PI + 2 * Math.PI * s));
    const made = piece(
      'gore',
      [
        edge('lower edge', curve(at(-1), 0, 1), { seam: 'joint' }),
        side('end', at(-1)(1), at(1)(1), { seam: 'seam' }),
        edge('upper edge', curve(at(1), 1, 0), { seam: 'joint' }),
        side('start', at(1)(0), at(-1)(0), { seam: 'seam' }),
      ],
      {
        quantity: gores,
        bend: isStraight ? rolled(tube) : { kind: 'formed', leastRadiusMm: tube, greatestRadiusMm: tube },
      },
    );
    const thetaList = sizes.row('theta_deg').map(rad);
    const patches = Array.from({ length: gores }, (_, i): ShapePatch => ({
      piece: 'gore',
      facets: isStraight ? [1, 0] : [1, major / tube / gores],
      solid: (u, v) => {
        const theta = Math.PI + 2 * Math.PI * u;
        const out = major + tube * Math.cos(theta);
        const up = -tube * Math.sin(theta);
        const turn = 2 * step * i;
        if (!isStraight)
          return vec3(out * Math.cos(turn + (2 * v - 1) * step), out * Math.sin(turn + (2 * v - 1) * step), up);
        const along = (2 * v - 1) * half(theta);
        return vec3(out * Math.cos(turn) - along * Math.sin(turn), out * Math.sin(turn) + along * Math.cos(turn), up);
      },
      ...(isStraight
        ? { flat: (u: number, v: number) => vec2(long * u, (2 * v - 1) * half(Math.PI + 2 * Math.PI * u)) }
        : {}),
    }));
    return ok({
      measures: measures({
        stretch_out: mm(long),
        gore_length: mm(long),
        widths: mm(thetaList.map((theta) => 2 * half(theta))),
        arc_widths: mm(thetaList.map((theta) => 2 * (major + tube * Math.cos(theta)) * step)),
        chord_widths: mm(thetaList.map((theta) => 2 * (major + tube * Math.cos(theta)) * Math.sin(step))),
        tangent_widths: mm(thetaList.map((theta) => 2 * (major + tube * Math.cos(theta)) * Math.tan(step))),
        x_of_ordinates: mm(thetaList.map((theta) => tube * theta)),
        mitre_angle_deg: degrees(step),
        gore_angle_deg: degrees(2 * step),
        greatest_width: mm(2 * half(0)),
        least_width: mm(2 * half(Math.PI)),
        gore_area: mm2(made.areaMm2),
        total_gore_area: mm2(made.areaMm2 * gores),
        area: mm2(4 * Math.PI ** 2 * major * tube),
        volume: mm3(2 * Math.PI ** 2 * major * tube ** 2),
        ...torusFigures(major, tube),
      }),
      pieces: [made],
      patches,
      warnings: bendWarnings(sheet, tube),
    });
  },
};

/** Torus skin of bands round the axis, each part of a cone: the tube becomes a polygon of n sides inside its circle. */
export const TORUS_ZONES: ShapeKind = {
  name: 'torus_zones',
  also: ['torus_bands'],
  says: 'Skin of a torus as bands round its axis, each part of a cone.',
  sizes: [
    MAJOR,
    length('minor_radius', 'radius of the tube, of the surface that is named', { default: 30, also: ['tube_radius'] }),
    count('zones', 'bands round the tube', { default: 8, least: 3, most: 200, also: ['bands'] }),
    { ...THICKNESS },
    K,
    surface('outside'),
  ],
  develop: (sizes) => {
    const sheet = rolledSheet(sizes);
    const [major, measured, zones] = [sizes.num('major_radius'), sizes.num('minor_radius'), sizes.num('zones')];
    const tube = measured + sheet.toNeutral;
    if (!(measured + sheet.toInside >= 0) || !(tube > 0))
      return fail('shape/too-thick', 'The sheet does not fit into the tube: take a thinner sheet or a larger tube.');
    if (!(major > Math.max(tube, measured + sheet.toOutside)))
      return fail('shape/sizes', 'major_radius must be more than minor_radius.');
    const step = (2 * Math.PI) / zones;
    const ring = (i: number): { r: number; z: number } => {
      // Half a step on, so that the outermost band stands upright.
      const t = ((i % zones) - 0.5) * step;
      return { r: major + tube * Math.cos(t), z: tube * Math.sin(t) };
    };
    const bands = Array.from({ length: zones }, (_, i) => {
      const [a, b] = [ring(i), ring(i + 1)];
      return developBand(
        `zone ${i + 1}`,
        { r0: a.r, z0: a.z, r1: b.r, z1: b.z },
        { lower: `rim ${((i + zones - 1) % zones) + 1}`, upper: `rim ${i + 1}` },
        180 / zones,
      );
    });
    const finite = (radii: readonly number[]) => mm(radii.map((one) => (Number.isFinite(one) ? one : 0)));
    return ok({
      measures: measures({
        slant: mm(2 * tube * Math.sin(step / 2)),
        rim_radii: mm(bands.map((_, i) => ring(i).r)),
        zone_outer_radii: finite(bands.map(({ outer }) => outer)),
        zone_inner_radii: finite(bands.map(({ inner }) => inner)),
        zone_angles_deg: degrees(bands.map((one) => one.angle)),
        zone_flat_areas: mm2(bands.map(({ area }) => area)),
        total_flat_area: mm2(bands.reduce((sum, { area }) => sum + area, 0)),
        rim_bevel_deg: degrees(step / 2),
        area: mm2(4 * Math.PI ** 2 * major * tube),
        volume: mm3(2 * Math.PI ** 2 * major * tube ** 2),
        ...torusFigures(major, tube),
      }),
      pieces: bands.map((one) => one.piece),
      patches: bands.map(({ patch }) => patch),
      // A band bends round the axis; the tightest goes round the hole.
      warnings: bendWarnings(sheet, major - tube),
    });
  },
};
