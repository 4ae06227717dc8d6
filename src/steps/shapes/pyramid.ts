import { fail, ok } from '../../base/result.ts';
import { degrees, measures, mm, mm2, mm3, plain } from './measures.ts';
import { AS, BASE_SIZES, baseRadius, depthOf, rings, SHEET, SIDE, tooMany, withPieces } from './polygon-solid.ts';
import { polyhedron, volumeOf } from './polyhedron.ts';
import type { ShapeKind } from './shape-kind.ts';
import { length } from './size-fields.ts';

/** A pyramid from the middle of its sides: apothems of base and top, and height, mm. */
interface Section {
  readonly base: number;
  readonly top: number;
  readonly height: number;
}

/**
 * All faces moved outward by `out`: a side that leans by `lean` from upright meets the level of the base, which has sunk, out (1 + sin lean) /
 * cos lean farther out, and that of the top out (1 - sin lean) / cos lean. An apex stays one.
 */
function moved({ base, top, height }: Section, out: number): Section {
  const lean = Math.atan2(base - top, height);
  const [sin, cos] = [Math.sin(lean), Math.cos(lean)];
  const wider = base + (out * (1 + sin)) / cos;
  if (top === 0) return { base: wider, top: 0, height: (wider * cos) / sin };
  return { base: wider, top: top + (out * (1 - sin)) / cos, height: height + 2 * out };
}

/** Regular pyramid or its frustum: slant height from apothems and height, angles from the faces themselves. */
export const PYRAMID: ShapeKind = {
  name: 'pyramid',
  also: ['regular_pyramid', 'pyramid_frustum'],
  says: 'Right pyramid on a regular polygon, whole or cut off level: panels with bevels, or a net.',
  sizes: [
    ...BASE_SIZES,
    length('height', 'from the base to the apex, or to the top where it is cut off', { default: 120 }),
    length('top_side', 'side of the top; 0 for an apex', { default: 0, least: 0 }),
    AS,
    SHEET,
    SIDE,
  ],
  develop: (sizes) => {
    const [sides, thickness] = [sizes.num('sides'), sizes.num('thickness')];
    const measured = baseRadius(sizes, sides);
    if (measured === null) return tooMany();
    const [sin, cos] = [Math.sin(Math.PI / sides), Math.cos(Math.PI / sides)];
    const section = {
      base: measured * cos,
      top: (sizes.num('top_side') / 2 / sin) * cos,
      height: sizes.num('height'),
    };
    const inside = moved(section, (depthOf(sizes) - 1) * thickness);
    if (thickness > 0 && !(inside.base > 0 && inside.height > 0))
      return fail('shape/too-thick', 'Nothing is left inside: take a thinner sheet or a larger pyramid.');
    const { base: apothem, top: topApothem, height } = moved(section, depthOf(sizes) * thickness);
    const radius = apothem / cos;
    const [side, top] = [2 * radius * sin, (2 * topApothem * sin) / cos];
    const solid = polyhedron(
      rings(sides, [
        { radius, z: 0 },
        { radius: top / 2 / sin, z: height },
      ]),
    );
    const { net, ...made } = withPieces(solid, sizes, (f) =>
      f === 0 ? 'base' : top > 0 && f === solid.faces.length - 1 ? 'top' : 'side panel',
    );
    const slant = Math.hypot(height, apothem - topApothem);
    const edge = Math.hypot(height, radius - top / 2 / sin);
    const toBase = solid.edges.find(({ faces }) => faces.includes(0));
    const between = solid.edges.find(
      ({ faces }) =>
        !faces.includes(0) &&
        faces.every((f) => solid.faces[f].length === (top > 0 ? 4 : 3)) &&
        !(top > 0 && faces.includes(solid.faces.length - 1)),
    );
    const [baseDihedral, sideDihedral] = [toBase?.dihedral ?? NaN, between?.dihedral ?? NaN];
    const tip = 2 * Math.atan2(side - top, 2 * slant);
    const [base, topArea] = [(sides * side * apothem) / 2, (sides * top * topApothem) / 2];
    const lateral = (sides * (side + top) * slant) / 2;
    return ok({
      ...made,
      measures: measures({
        side: mm(side),
        apothem: mm(apothem),
        height: mm(height),
        circumradius: mm(radius),
        slant_height: mm(slant),
        slant: mm(slant),
        lateral_edge: mm(edge),
        edge_length: mm(edge),
        base_area: mm2(base),
        top_area: top > 0 ? mm2(topArea) : undefined,
        face_area: mm2(lateral / sides),
        lateral_area: mm2(lateral),
        area: mm2(lateral + base + topArea),
        volume: mm3(volumeOf(solid)),
        face_tip_angle_deg: degrees(tip),
        development_angle_deg: degrees(sides * tip),
        apex_defect_deg: top > 0 ? undefined : degrees(2 * Math.PI - sides * tip),
        base_dihedral_deg: degrees(baseDihedral),
        side_dihedral_deg: degrees(sideDihedral),
        dihedral_deg: degrees(sideDihedral),
        half_dihedral_deg: degrees(sideDihedral / 2),
        bevel_from_square_deg: degrees((Math.PI - sideDihedral) / 2),
        base_bevel_deg: degrees((Math.PI - baseDihedral) / 2),
        face_lean_deg: degrees(Math.atan2(apothem - topApothem, height)),
        inner_face_setback: mm(thickness / Math.tan(sideDihedral / 2)),
        net_cut_edges: plain(net.cutEdges),
        net_perimeter: mm(net.perimeter),
      }),
    });
  },
};
