import { fail, ok, type Result } from '../../base/result.ts';
import { vec2, vec3 } from '../../geom/vec.ts';
import { degrees, measures, mm, mm2, mm3, percent, plain, type Figure } from './measures.ts';
import { piece, rolled, side } from './pieces.ts';
import { bendWarnings, rolledSheet, warning, type RolledSheet } from './rolled-sheet.ts';
import { inSector, sectorPiece } from './sector.ts';
import type { Development, ShapeKind } from './shape-kind.ts';
import { angle, count, K, length, surface, THICKNESS } from './size-fields.ts';
import type { Sizes } from './sizes.ts';

/** A right frustum by the surface it is measured on: radii of both rims and height, mm; `small` 0 is a cone. */
interface Frustum {
  readonly large: number;
  readonly small: number;
  readonly height: number;
}

/**
 * The neutral surface of a frustum whose wall lies to one side of the measured surface, with rims cut square to the wall: every point moves
 * along the normal, which leans by the half apex angle from level, so rims keep their distance and a cone's apex moves along the axis.
 */
function neutralFrustum({ large, small, height }: Frustum, { toNeutral }: RolledSheet): Frustum {
  const cos = height / Math.hypot(height, large - small);
  const moved = { large: large + toNeutral * cos, small: small + toNeutral * cos, height };
  if (small > 0 || toNeutral === 0) return moved;
  // A pointed cone stays pointed: the height follows from the slope.
  return { large: moved.large, small: 0, height: (moved.large * height) / large };
}

/** Figures and pieces of a frustum (radial line development: sector angle 2 pi sin(half apex), radii of the arcs r / sin(half apex)). */
function developFrustum(frustum: Frustum, sheet: RolledSheet, pieces: number): Result<Development> {
  const { large, small, height } = neutralFrustum(frustum, sheet);
  if (!(large > 0) || (small <= 0 && frustum.small > 0) || !(height > 0))
    return fail(
      'shape/too-thick',
      `A wall of ${sheet.thickness} mm leaves no room inside: take a thinner sheet or larger radii.`,
    );
  const slant = Math.hypot(height, large - small);
  const sin = (large - small) / slant;
  const isPointed = small === 0;
  const warnings = bendWarnings(sheet, isPointed ? large : Math.min(large, small));
  const named = (k: number): string => (pieces === 1 ? 'seam' : `seam ${k}`);
  const area = Math.PI * (large + small) * slant;
  const common: Record<string, Figure | undefined> = {
    slant: mm(slant),
    slant_height: mm(slant),
    height: mm(height),
    area: mm2(area),
    piece_area: mm2(area / pieces),
    volume: mm3((Math.PI / 3) * height * (large ** 2 + large * small + small ** 2)),
    half_apex_deg: degrees(Math.asin(sin)),
    apex_angle_deg: degrees(2 * Math.asin(sin)),
    base_angle_deg: degrees(Math.acos(sin)),
    large_circumference: mm(2 * Math.PI * large),
    small_circumference: isPointed ? undefined : mm(2 * Math.PI * small),
    base_circumference: mm(2 * Math.PI * large),
    outer_strain_percent: percent(
      (100 * (1 - sheet.k) * sheet.thickness) / (isPointed ? large : Math.min(large, small)),
    ),
  };
  if (sin === 0) {
    const wide = (2 * Math.PI * large) / pieces;
    const [a, b, c, d] = [vec2(0, 0), vec2(wide, 0), vec2(wide, slant), vec2(0, slant)];
    return ok({
      measures: measures({
        ...common,
        sector_angle_deg: degrees(0),
        outer_arc: mm(2 * Math.PI * large),
        inner_arc: mm(2 * Math.PI * large),
        arc_sagitta: mm(0),
      }),
      pieces: [
        piece(
          'wrap',
          [
            side('base', a, b),
            side('end', b, c, { seam: named(1) }),
            side('top', c, d),
            side('start', d, a, { seam: named(1) }),
          ],
          { quantity: pieces, bend: rolled(large) },
        ),
      ],
      warnings: [...warnings, warning('shape/straight', 'Both rims are alike, so the development is a rectangle.')],
    });
  }
  const [outer, inner] = [large / Math.abs(sin), small / Math.abs(sin)];
  const [far, near] = outer >= inner ? [outer, inner] : [inner, outer];
  const sector = 2 * Math.PI * Math.abs(sin);
  const share = { outer: far, inner: near, angle: sector / pieces };
  const least = Math.min(large, small);
  const figures = {
    ...common,
    outer_radius: mm(far),
    inner_radius: isPointed ? undefined : mm(near),
    sector_radius: mm(far),
    sector_angle_deg: degrees(sector),
    piece_angle_deg: degrees(sector / pieces),
    wedge_deg: degrees(2 * Math.PI - sector),
    defect_deg: degrees(2 * Math.PI - sector),
    outer_arc: mm(far * sector),
    inner_arc: isPointed ? undefined : mm(near * sector),
    arc_length: mm(far * sector),
    outer_chord: mm(2 * far * Math.sin(share.angle / 2)),
    inner_chord: isPointed ? undefined : mm(2 * near * Math.sin(share.angle / 2)),
    sector_chord: mm(2 * far * Math.sin(share.angle / 2)),
    arc_sagitta: mm(2 * far * Math.sin(share.angle / 4) ** 2),
    inner_arc_sagitta: isPointed ? undefined : mm(2 * near * Math.sin(share.angle / 4) ** 2),
    outer_radius_over_slant: plain(far / slant),
  };
  const [baseName, topName] = large >= small ? ['base', 'top'] : ['top', 'base'];
  const made = sectorPiece(isPointed ? 'cone' : 'frustum', share, {
    quantity: pieces,
    seam: named(1),
    outerName: baseName,
    innerName: topName,
    // Along its generators a cone is bent to r over the cosine of its half angle (Meusnier).
    bend: rolled(isPointed ? 0 : least / Math.cos(Math.asin(sin)), Math.max(large, small) / Math.cos(Math.asin(sin))),
  });
  const apexAngle = sector / pieces;
  return ok({
    measures: measures(figures),
    pieces: [made],
    patches: Array.from({ length: pieces }, (_, i) => ({
      piece: made.name,
      facets: [1 / pieces, 0] as const,
      solid: (u: number, v: number) => {
        const [r, turn] = [large + (small - large) * v, (2 * Math.PI * (i + u)) / pieces];
        return vec3(r * Math.cos(turn), r * Math.sin(turn), height * v);
      },
      // Seen from the outside the way round runs to the right, the apex up or down: the sector is turned over to match.
      flat: (u: number, v: number) =>
        inSector({ ...share, angle: apexAngle }, large >= small ? 1 - u : u, outer + (inner - outer) * v),
    })),
    warnings,
  });
}

const PIECES = count('pieces', 'equal pieces the shape is made of', { default: 1, most: 100 });

export const CONE: ShapeKind = {
  name: 'cone',
  also: ['right_cone', 'circular_cone'],
  says: 'Right circular cone: its development is a sector.',
  sizes: [
    length('base_radius', 'radius of the base', { default: 100 }),
    length('height', 'from base to apex', { default: 240 }),
    { ...THICKNESS },
    K,
    surface('outside'),
    PIECES,
  ],
  develop: (sizes) =>
    developFrustum(
      { large: sizes.num('base_radius'), small: 0, height: sizes.num('height') },
      rolledSheet(sizes),
      sizes.num('pieces'),
    ),
};

const frustumOf = (sizes: Sizes): Frustum => ({
  large: sizes.num('large_radius'),
  small: sizes.num('small_radius'),
  height: sizes.num('height'),
});

export const FRUSTUM: ShapeKind = {
  name: 'frustum',
  also: ['truncated_cone', 'cone_frustum', 'tapered_cylinder'],
  says: 'Frustum of a right circular cone: its development is part of a ring.',
  sizes: [
    length('large_radius', 'radius of the larger rim', { default: 100, also: ['base_radius', 'bottom_radius'] }),
    length('small_radius', 'radius of the smaller rim', { default: 60, also: ['top_radius'] }),
    length('height', 'between the rims, along the axis', { default: 120 }),
    { ...THICKNESS },
    K,
    surface('outside'),
    PIECES,
  ],
  develop: (sizes) => developFrustum(frustumOf(sizes), rolledSheet(sizes), sizes.num('pieces')),
};

/** The wrap of a pipe that grows thinner: a frustum measured on its inside, with sheet rolled round it. */
export const TAPERED_WRAP: ShapeKind = {
  name: 'tapered_wrap',
  also: ['tapered_pipe', 'tapered_pipe_wrap'],
  says: 'Sheet rolled round a tapered pipe or handle, edges meeting: part of a ring, as long as its neutral surface.',
  sizes: [
    length('large_radius', 'radius at the thick end, of the surface that is named', {
      default: 20,
      also: ['base_radius'],
    }),
    length('small_radius', 'radius at the thin end', { default: 14, also: ['top_radius'] }),
    length('height', 'along the axis', { default: 300, also: ['length'] }),
    { ...THICKNESS, default: 6 },
    K,
    surface('inside'),
    PIECES,
  ],
  develop: (sizes) => developFrustum(frustumOf(sizes), rolledSheet(sizes), sizes.num('pieces')),
};

export const CONE_FROM_DISC: ShapeKind = {
  name: 'cone_from_disc',
  also: ['disc_with_wedge', 'disc_cone'],
  says: 'A disc with a wedge cut out closes to a cone: R = r (360 - w) / 360.',
  sizes: [
    length('disc_radius', 'radius of the disc, which is the slant of the cone', { default: 150 }),
    angle('wedge_deg', 'angle of the wedge that is cut out', { default: 60, least: 0.001, most: 359.999 }),
  ],
  develop: (sizes) => {
    const [disc, wedge] = [sizes.num('disc_radius'), sizes.num('wedge_deg')];
    const base = (disc * (360 - wedge)) / 360;
    const height = Math.sqrt((disc - base) * (disc + base));
    const none = { thickness: 0, k: 0.5, toNeutral: 0, toOutside: 0, toInside: 0 };
    const cone = developFrustum({ large: base, small: 0, height }, none, 1);
    if (!cone.ok) return cone;
    const own = measures({ base_radius: mm(base), base_diameter: mm(2 * base) });
    return ok({
      ...cone.value,
      measures: [
        ...own,
        ...cone.value.measures.filter(({ name }) => name !== 'wedge_deg'),
        ...measures({ wedge_chord: mm(2 * disc * Math.sin((wedge * Math.PI) / 360)) }),
      ],
    });
  },
};
