import { ok } from '../../base/result.ts';
import { length3, sub3, vec3, type Vec3 } from '../../geom/vec.ts';
import { facePieces } from './face-pieces.ts';
import { degrees, measures, mm, mm2, mm3 } from './measures.ts';
import { SHEET } from './polygon-solid.ts';
import { polyhedron, surfaceArea } from './polyhedron.ts';
import type { ShapeKind } from './shape-kind.ts';
import { length } from './size-fields.ts';

/** Hopper: a rectangle below and one above it, sides parallel, both in the middle or the upper one beside it. */
export const HOPPER: ShapeKind = {
  name: 'hopper',
  also: ['rectangular_pyramid_frustum', 'rectangle_to_rectangle'],
  says: 'Rectangular pyramid cut off level, or a transition between two rectangles: four panels with mitred edges.',
  sizes: [
    length('base_length', 'lower rectangle, along x', { default: 200, also: ['bottom_length'] }),
    length('base_width', 'lower rectangle, along y', { default: 140, also: ['bottom_width'] }),
    length('top_length', 'upper rectangle, along x', { default: 100 }),
    length('top_width', 'upper rectangle, along y', { default: 60 }),
    length('height', 'between both', { default: 90 }),
    length('offset_x', 'how far the middle of the upper lies beside that of the lower, along x', {
      default: 0,
      least: -100_000,
    }),
    length('offset_y', 'the same along y', { default: 0, least: -100_000 }),
    SHEET,
  ],
  develop: (sizes) => {
    const [l, w, tl, tw, h, dx, dy, t] = [
      'base_length',
      'base_width',
      'top_length',
      'top_width',
      'height',
      'offset_x',
      'offset_y',
      'thickness',
    ].map((name) => sizes.num(name));
    const ring = (a: number, b: number, x: number, y: number, z: number): Vec3[] => [
      vec3(x - a / 2, y - b / 2, z),
      vec3(x + a / 2, y - b / 2, z),
      vec3(x + a / 2, y + b / 2, z),
      vec3(x - a / 2, y + b / 2, z),
    ];
    const corners = [...ring(l, w, 0, 0, 0), ...ring(tl, tw, dx, dy, h)];
    const solid = polyhedron({ corners, faces: [0, 1, 2, 3].map((i) => [i, (i + 1) % 4, 4 + ((i + 1) % 4), 4 + i]) });
    const names = ['front', 'right', 'back', 'left'];
    const dihedrals = [0, 1, 2, 3].map(
      (i) => solid.edges.find(({ a, b }) => Math.min(a, b) === i && Math.max(a, b) === i + 4)?.dihedral ?? NaN,
    );
    const heights = [
      Math.hypot(h, (w - tw) / 2 + dy),
      Math.hypot(h, (l - tl) / 2 - dx),
      Math.hypot(h, (w - tw) / 2 - dy),
      Math.hypot(h, (l - tl) / 2 + dx),
    ];
    return ok({
      solid,
      pieces: facePieces(solid, (f) => names[f]),
      measures: measures({
        slant_heights: mm(heights),
        front_slant: mm(heights[0]),
        side_slant: mm(heights[1]),
        corner_edges: mm([0, 1, 2, 3].map((i) => length3(sub3(corners[i + 4], corners[i])))),
        corner_edge: mm(length3(sub3(corners[4], corners[0]))),
        panel_areas: mm2(solid.areas),
        area: mm2(surfaceArea(solid)),
        dihedral_deg: degrees(dihedrals[0]),
        corner_dihedrals_deg: degrees(dihedrals),
        bevel_from_square_deg: degrees((Math.PI - dihedrals[0]) / 2),
        corner_bevels_deg: degrees(dihedrals.map((one) => (Math.PI - one) / 2)),
        front_lean_deg: degrees(Math.atan2((w - tw) / 2 + dy, h)),
        side_lean_deg: degrees(Math.atan2((l - tl) / 2 - dx, h)),
        inner_face_setback: mm(t / Math.tan(dihedrals[0] / 2)),
        volume: mm3((h / 6) * (2 * l * w + l * tw + tl * w + 2 * tl * tw)),
      }),
    });
  },
};
