import { fail, ok } from '../../base/result.ts';
import { degrees, measures, mm, mm2, mm3, plain } from './measures.ts';
import { AS, BASE_SIZES, baseRadius, depthOf, rings, SHEET, SIDE, tooMany, withPieces } from './polygon-solid.ts';
import { polyhedron } from './polyhedron.ts';
import type { ShapeKind } from './shape-kind.ts';
import { length } from './size-fields.ts';

/** Regular prism (mensuration tables): lateral area n a h, base n a² / (4 tan(pi / n)), sides meet under 180 - 360 / n degrees. */
export const PRISM: ShapeKind = {
  name: 'prism',
  also: ['regular_prism'],
  says: 'Right prism on a regular polygon: panels with bevels, or a net.',
  sizes: [...BASE_SIZES, length('height', 'between both bases', { default: 120, also: ['length'] }), AS, SHEET, SIDE],
  develop: (sizes) => {
    const [sides, thickness] = [sizes.num('sides'), sizes.num('thickness')];
    const measured = baseRadius(sizes, sides);
    if (measured === null) return tooMany();
    // The faces lie outside what is measured by so much.
    const out = depthOf(sizes) * thickness;
    const [radius, height] = [measured + out / Math.cos(Math.PI / sides), sizes.num('height') + 2 * out];
    const apothem = radius * Math.cos(Math.PI / sides);
    if (thickness >= Math.min(apothem, height / 2))
      return fail('shape/too-thick', 'Nothing is left inside: take a thinner sheet or a larger prism.');
    const solid = polyhedron(
      rings(sides, [
        { radius, z: 0 },
        { radius, z: height },
      ]),
    );
    const { net, ...made } = withPieces(solid, sizes, (f) =>
      f === 0 || f === solid.faces.length - 1 ? 'base' : 'side panel',
    );
    const side = 2 * radius * Math.sin(Math.PI / sides);
    const base = (sides * side * apothem) / 2;
    const between = Math.PI - (2 * Math.PI) / sides;
    return ok({
      ...made,
      measures: measures({
        side: mm(side),
        apothem: mm(apothem),
        height: mm(height),
        circumradius: mm(radius),
        across_flats: mm(2 * apothem),
        base_area: mm2(base),
        base_perimeter: mm(sides * side),
        lateral_area: mm2(sides * side * height),
        area: mm2(2 * base + sides * side * height),
        volume: mm3(base * height),
        dihedral_deg: degrees(between),
        side_dihedral_deg: degrees(between),
        base_dihedral_deg: degrees(Math.PI / 2),
        bevel_from_square_deg: degrees(Math.PI / sides),
        base_bevel_deg: degrees(Math.PI / 4),
        inner_face_setback: mm(thickness * Math.tan(Math.PI / sides)),
        inner_side: mm(side - 2 * thickness * Math.tan(Math.PI / sides)),
        net_cut_edges: plain(net.cutEdges),
        net_perimeter: mm(net.perimeter),
      }),
    });
  },
};
