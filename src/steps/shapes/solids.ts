import { fail, ok, type Result } from '../../base/result.ts';
import { length3, scale3 } from '../../geom/vec.ts';
import type { ShapeMeasure } from '../../model/shape.ts';
import type { SizeField } from '../../model/shape-size.ts';
import { facePieces, netPiece } from './face-pieces.ts';
import { degrees, measures, mm, mm2, mm3, plain, type Figure } from './measures.ts';
import { depthOf, SHEET, SIDE } from './polygon-solid.ts';
import { angleDefect, polyhedron, surfaceArea, volumeOf, type Polyhedron } from './polyhedron.ts';
import { warning } from './rolled-sheet.ts';
import type { Development, ShapeKind } from './shape-kind.ts';
import { choice, count, figure, length } from './size-fields.ts';
import type { Sizes } from './sizes.ts';
import { ARCHIMEDEAN, PLATONIC, uniformSolid, type UniformSolid } from './uniform-solids.ts';

const words = (name: string): string => name.replace(/_/g, ' ');

const FACE_NAMES: Readonly<Record<number, string>> = {
  3: 'triangle',
  4: 'square',
  5: 'pentagon',
  6: 'hexagon',
  8: 'octagon',
  10: 'decagon',
};

const faceName = (sides: number): string => FACE_NAMES[sides] ?? `face of ${sides} sides`;

/** Angles between faces by the numbers of their sides, as `3-6`. */
function pairs(solid: Polyhedron): Map<string, number> {
  const found = new Map<string, number>();
  for (const { faces, dihedral } of solid.edges) {
    const [a, b] = faces.map((f) => solid.faces[f].length).sort((x, y) => x - y);
    found.set(`${a}-${b}`, dihedral);
  }
  return new Map([...found].sort(([a], [b]) => a.localeCompare(b, 'en', { numeric: true })));
}

const scaled = (solid: Polyhedron, edge: number): Polyhedron =>
  polyhedron({ corners: solid.corners.map((p) => scale3(p, edge)), faces: solid.faces });

/** Least distance from the middle to a face of each number of sides, of a solid with edges of 1. */
const faceDistance = ({ corners, faces, normals }: Polyhedron, f: number): number => {
  const p = corners[faces[f][0]];
  return p.x * normals[f].x + p.y * normals[f].y + p.z * normals[f].z;
};

function figuresOf(name: UniformSolid, edge: number, of?: string): ShapeMeasure[] {
  const unit = uniformSolid(name);
  const circumradius = length3(unit.corners[0]);
  const inradius = Math.min(...unit.faces.map((_, f) => faceDistance(unit, f)));
  const { a, b } = unit.edges[0];
  const middle = scale3(
    {
      x: unit.corners[a].x + unit.corners[b].x,
      y: unit.corners[a].y + unit.corners[b].y,
      z: unit.corners[a].z + unit.corners[b].z,
    },
    0.5,
  );
  const kinds = pairs(unit);
  const one = [...kinds.values()][0];
  const net = netPiece(unit);
  const dihedrals: Record<string, Figure> = {};
  if (kinds.size === 1)
    Object.assign(dihedrals, {
      dihedral_deg: degrees(one),
      half_dihedral_deg: degrees(one / 2),
      bevel_from_square_deg: degrees((Math.PI - one) / 2),
    });
  if (!isRegular(name))
    for (const [pair, angle] of kinds) {
      dihedrals[pair] = degrees(angle);
      dihedrals[`dihedral_${pair}_deg`] = degrees(angle);
      dihedrals[`bevel_${pair}_deg`] = degrees((Math.PI - angle) / 2);
    }
  const sides = [...new Set(unit.faces.map((face) => face.length))].sort((x, y) => x - y);
  return measures(
    {
      ...dihedrals,
      area: mm2(surfaceArea(unit) * edge ** 2),
      volume: mm3(volumeOf(unit) * edge ** 3),
      faces: plain(unit.faces.length),
      edges: plain(unit.edges.length),
      vertices: plain(unit.corners.length),
      ...Object.fromEntries(
        sides.map((n) => [`faces_of_${n}_sides`, plain(unit.faces.filter((face) => face.length === n).length)]),
      ),
      net_cut_edges: plain(net.cutEdges),
      net_fold_edges: plain(unit.edges.length - net.cutEdges),
      net_perimeter: mm(net.perimeter * edge),
      edge: mm(edge),
      circumradius: mm(circumradius * edge),
      circumscribed_diameter: mm(2 * circumradius * edge),
      inradius: mm(inradius * edge),
      midradius: mm(length3(middle) * edge),
      circumradius_over_edge: plain(circumradius),
      inradius_over_edge: plain(inradius),
      ...Object.fromEntries(
        sides.map((n) => [
          `distance_to_${n}_sides`,
          mm(
            edge *
              faceDistance(
                unit,
                unit.faces.findIndex((face) => face.length === n),
              ),
          ),
        ]),
      ),
      vertex_defect_deg: degrees(angleDefect(unit, 0)),
      total_defect_deg: degrees(unit.corners.reduce((sum, _, v) => sum + angleDefect(unit, v), 0)),
    },
    of,
  );
}

const SOLID_SIZES: readonly SizeField[] = [
  length('edge', 'length of every edge; or give circumscribed_diameter or inscribed_diameter', {
    also: ['edge_length', 'side'],
  }),
  length('circumscribed_diameter', 'across the sphere through the corners', { also: ['ball_diameter'] }),
  length('inscribed_diameter', 'across the largest sphere inside'),
  choice('as', 'panels: every face a piece; net: one piece to fold', ['panels', 'net']),
  SHEET,
];

function edgeOf(name: UniformSolid, sizes: Sizes): Result<number> {
  const given = ['edge', 'circumscribed_diameter', 'inscribed_diameter'].filter((one) => sizes.has(one));
  if (given.length > 1)
    return fail('shape/too-many-sizes', 'Give one of edge, circumscribed_diameter and inscribed_diameter.');
  const unit = uniformSolid(name);
  if (given[0] === 'circumscribed_diameter')
    return ok(sizes.num('circumscribed_diameter') / 2 / length3(unit.corners[0]));
  if (given[0] === 'inscribed_diameter')
    return ok(sizes.num('inscribed_diameter') / 2 / Math.min(...unit.faces.map((_, f) => faceDistance(unit, f))));
  return ok(given.length === 0 ? 40 : sizes.num('edge'));
}

const isRegular = (name: UniformSolid): boolean => (PLATONIC as readonly string[]).includes(name);

/** One regular or half-regular solid; the sizes of a half-regular one are of its outside. */
const solidKind = (name: UniformSolid): ShapeKind => ({
  name,
  says: `Regular-faced solid, ${words(name)}: angles between faces, bevels, panels or a net.`,
  // A regular solid keeps its form when its faces move outward; a half-regular one does not.
  sizes: isRegular(name) ? [...SOLID_SIZES, SIDE] : SOLID_SIZES,
  develop: (sizes): Result<Development> => {
    const measured = edgeOf(name, sizes);
    if (!measured.ok) return measured;
    const thickness = sizes.num('thickness');
    const outward = isRegular(name) ? depthOf(sizes) * thickness : 0;
    const edge = measured.value + outward / faceDistance(uniformSolid(name), 0);
    const solid = scaled(uniformSolid(name), edge);
    const inner = Math.min(...solid.faces.map((_, f) => faceDistance(solid, f)));
    if (thickness >= inner)
      return fail(
        'shape/too-thick',
        `Nothing is left inside: the faces stand ${inner.toFixed(2)} mm from the middle, so take a thinner sheet or a larger solid.`,
      );
    const setbacks = new Map(
      [...pairs(solid)].map(
        ([pair, angle]) => [`inner_face_setback_${pair}`, mm(thickness / Math.tan(angle / 2))] as const,
      ),
    );
    const isNet = sizes.word('as') === 'net';
    const net = isNet ? netPiece(solid) : null;
    return ok({
      measures: [...figuresOf(name, edge), ...(thickness > 0 ? measures(Object.fromEntries(setbacks)) : [])],
      pieces: net === null ? facePieces(solid, (f) => faceName(solid.faces[f].length)) : [net.piece],
      solid,
      warnings:
        net?.overlaps === true ? [warning('shape/net-overlaps', 'The net lies over itself: cut it as panels.')] : [],
    });
  },
});

export const SOLIDS: readonly ShapeKind[] = [...PLATONIC, ...ARCHIMEDEAN].map(solidKind);

export const PLATONIC_SOLIDS: ShapeKind = {
  name: 'platonic_solids',
  also: ['platonic'],
  says: 'Table of the five regular solids of one edge: angles between faces, bevels, areas and nets.',
  sizes: [length('edge', 'length of every edge', { default: 40 })],
  develop: (sizes) => ok({ measures: PLATONIC.flatMap((name) => figuresOf(name, sizes.num('edge'), name)) }),
};

export const ARCHIMEDEAN_SOLIDS: ShapeKind = {
  name: 'archimedean_solids',
  also: ['archimedean'],
  says: 'Table of the thirteen half-regular solids of one edge: angles between their faces by the numbers of sides, bevels, areas and nets.',
  sizes: [length('edge', 'length of every edge', { default: 40 })],
  develop: (sizes) => {
    const angles = ARCHIMEDEAN.flatMap((name) =>
      [...pairs(uniformSolid(name))].map(([pair, angle]) => [`${name} ${pair}`, degrees(angle)] as const),
    );
    const each = ARCHIMEDEAN.flatMap((name) => figuresOf(name, sizes.num('edge'), name));
    return ok({ measures: [...measures(Object.fromEntries(angles)), ...each] });
  },
};

/** Angle defects of the regular solids and of flat corners (discrete theorem of Gauss and Bonnet: all together 360 degrees times 2 - 2 g). */
export const ANGLE_DEFECTS: ShapeKind = {
  name: 'angle_defects',
  also: ['developability', 'angle_defect'],
  says: 'What is missing to a whole turn round a corner; over a closed surface 360 degrees times (2 - 2 genus).',
  sizes: [
    count('triangles', 'equilateral triangles round a corner', { default: 7, most: 100 }),
    figure('face_angles_deg', 'angles of faces round a corner', 'deg', {
      default: [90, 90, 90],
      isList: true,
      least: 0,
      most: 360,
    }),
    count('genus', 'handles of a closed surface', { default: 0, least: 0 }),
    count('euler_number', 'vertices less edges plus faces, in place of genus', { least: -2000 }),
  ],
  develop: (sizes) => {
    const euler = sizes.has('euler_number') ? sizes.num('euler_number') : 2 - 2 * sizes.num('genus');
    return ok({
      measures: measures({
        ...Object.fromEntries(PLATONIC.map((name) => [`${name}_vertex`, degrees(angleDefect(uniformSolid(name), 0))])),
        ...Object.fromEntries(
          ARCHIMEDEAN.map((name) => [`${name}_vertex`, degrees(angleDefect(uniformSolid(name), 0))]),
        ),
        total_genus0: plain(720, 'deg'),
        total_torus: plain(0, 'deg'),
        total: plain(360 * euler, 'deg'),
        total_defect_deg: plain(360 * euler, 'deg'),
        seven_equilateral_triangles: plain(360 - 7 * 60, 'deg'),
        six_equilateral_triangles: plain(360 - 6 * 60, 'deg'),
        five_equilateral_triangles: plain(360 - 5 * 60, 'deg'),
        equilateral_triangles: plain(360 - 60 * sizes.num('triangles'), 'deg'),
        defect_deg: plain(360 - sizes.row('face_angles_deg').reduce((sum, one) => sum + one, 0), 'deg'),
      }),
    });
  },
};
