import { fail, ok } from '../../base/result.ts';
import { length3, sub3, vec3, type Vec3 } from '../../geom/vec.ts';
import type { ShapeFaces } from '../../model/shape.ts';
import { facePieces, netPiece } from './face-pieces.ts';
import { degrees, measures, mm, mm2, mm3, plain } from './measures.ts';
import { polyhedron, surfaceArea, volumeOf, type Polyhedron } from './polyhedron.ts';
import { warning } from './rolled-sheet.ts';
import type { Development, ShapeKind } from './shape-kind.ts';
import { choice, count, length } from './size-fields.ts';
import type { Sizes } from './sizes.ts';

const AS = choice('as', 'panels: every face a piece; net: one piece to fold', ['panels', 'net']);
const SHEET = length('thickness', 'thickness of the sheet; the size is that of the outside', {
  default: 0,
  least: 0,
  most: 200,
});

/** Circumradius of the base, from the one size of it that is given; side 60 where none is. */
function baseRadius(sizes: Sizes, sides: number): number | null {
  const given = ['side', 'circumradius', 'across_flats'].filter((name) => sizes.has(name));
  if (given.length > 1) return null;
  const sin = Math.sin(Math.PI / sides);
  if (given[0] === 'circumradius') return sizes.num('circumradius');
  if (given[0] === 'across_flats') return sizes.num('across_flats') / 2 / Math.cos(Math.PI / sides);
  return (given.length === 0 ? 60 : sizes.num('side')) / 2 / sin;
}

const BASE_SIZES = [
  count('sides', 'sides of the base', { default: 6, least: 3, most: 200, also: ['number_of_sides', 'n'] }),
  length('side', 'side of the base; or give circumradius or across_flats', {
    also: ['base_side', 'side_length', 'base_edge', 'edge'],
  }),
  length('circumradius', 'from the middle of the base to a corner', { also: ['base_radius'] }),
  length('across_flats', 'twice from the middle of the base to a side'),
];

/** Rings of corners one over the other and faces between them: a ring of one corner is an apex. */
function rings(sides: number, levels: readonly { readonly radius: number; readonly z: number }[]): ShapeFaces {
  const corners: Vec3[] = [];
  const rows = levels.map(({ radius, z }) => {
    if (radius === 0) return [corners.push(vec3(0, 0, z)) - 1];
    // A side of the polygon faces the front.
    return Array.from({ length: sides }, (_, i) => {
      const turn = -Math.PI / 2 + ((i - 0.5) * 2 * Math.PI) / sides;
      return corners.push(vec3(radius * Math.cos(turn), radius * Math.sin(turn), z)) - 1;
    });
  });
  const faces: number[][] = [];
  if (rows[0].length > 1) faces.push([...rows[0]].reverse());
  for (let k = 1; k < rows.length; k += 1)
    for (let i = 0; i < sides; i += 1) {
      const [a, b] = [rows[k - 1], rows[k]];
      const j = (i + 1) % sides;
      faces.push([...new Set([a[i % a.length], a[j % a.length], b[j % b.length], b[i % b.length]])]);
    }
  const last = rows[rows.length - 1];
  if (last.length > 1) faces.push([...last]);
  return { corners, faces };
}

function withPieces(
  solid: Polyhedron,
  sizes: Sizes,
  nameOf: (face: number) => string,
): Pick<Development, 'pieces' | 'solid' | 'warnings'> & { readonly net: ReturnType<typeof netPiece> } {
  const net = netPiece(solid);
  const isNet = sizes.word('as') === 'net';
  return {
    net,
    solid,
    pieces: isNet ? [net.piece] : facePieces(solid, nameOf),
    warnings:
      isNet && net.overlaps ? [warning('shape/net-overlaps', 'The net lies over itself: cut it as panels.')] : [],
  };
}

const tooMany = () => fail('shape/too-many-sizes', 'Give one of side, circumradius and across_flats.');

/** Regular prism (mensuration tables): lateral area n a h, base n a² / (4 tan(pi / n)), sides meet under 180 - 360 / n degrees. */
export const PRISM: ShapeKind = {
  name: 'prism',
  also: ['regular_prism'],
  says: 'Right prism on a regular polygon: panels with bevels, or a net.',
  sizes: [...BASE_SIZES, length('height', 'between both bases', { default: 120, also: ['length'] }), AS, SHEET],
  develop: (sizes) => {
    const [sides, height, thickness] = [sizes.num('sides'), sizes.num('height'), sizes.num('thickness')];
    const radius = baseRadius(sizes, sides);
    if (radius === null) return tooMany();
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
  ],
  develop: (sizes) => {
    const [sides, height, thickness] = [sizes.num('sides'), sizes.num('height'), sizes.num('thickness')];
    const radius = baseRadius(sizes, sides);
    if (radius === null) return tooMany();
    const sin = Math.sin(Math.PI / sides);
    const [side, top] = [2 * radius * sin, sizes.num('top_side')];
    const [apothem, topApothem] = [radius * Math.cos(Math.PI / sides), top / 2 / Math.tan(Math.PI / sides)];
    const solid = polyhedron(
      rings(sides, [
        { radius, z: 0 },
        { radius: top / 2 / sin, z: height },
      ]),
    );
    if (thickness > 0 && thickness * 3 >= Math.min(apothem, height))
      return fail('shape/too-thick', 'Hardly anything is left inside: take a thinner sheet or a larger pyramid.');
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

/** Box of slabs glued at butt, mitred or rebated corners: the sizes every slab is cut to. */
export const BOX: ShapeKind = {
  name: 'box',
  also: ['slab_box'],
  says: 'Box of slabs with butt or mitred corners, with or without a lid: the size of every slab.',
  sizes: [
    length('length', 'outside, along x', { default: 200 }),
    length('width', 'outside, along y', { default: 120, also: ['depth'] }),
    length('height', 'outside, along z', { default: 80 }),
    { ...SHEET, default: 10 },
    choice('corners', 'butt: long sides cover short ones, floor and lid cover all; mitre: all edges at 45 degrees', [
      'butt',
      'mitre',
    ]),
    choice('lid', 'whether it is closed', ['yes', 'no']),
  ],
  develop: (sizes) => {
    const [l, w, h, t] = ['length', 'width', 'height', 'thickness'].map((name) => sizes.num(name));
    if (!(Math.min(l, w, h) > 2 * t))
      return fail('shape/too-thick', 'Nothing is left inside: take a thinner sheet or a larger box.');
    const hasLid = sizes.word('lid') === 'yes';
    const isMitred = sizes.word('corners') === 'mitre';
    const covers = isMitred ? 0 : t * (hasLid ? 2 : 1);
    const inside = isMitred ? 0 : 2 * t;
    const bevel = isMitred ? 45 : 0;
    const slab = (name: string, a: number, b: number, quantity: number) => {
      const ring = [vec3(0, 0, 0), vec3(a, 0, 0), vec3(a, b, 0), vec3(0, b, 0)];
      const [made] = facePieces(polyhedron({ corners: ring, faces: [[0, 1, 2, 3]] }), () => name);
      return {
        ...made,
        quantity,
        outline: made.outline.map((one) => ({ ...one, bevelDeg: { from: bevel, to: bevel } })),
      };
    };
    const pieces = [
      slab('floor', l, w, 1),
      ...(hasLid ? [slab('lid', l, w, 1)] : []),
      slab('long side', l, h - covers, 2),
      slab('short side', w - inside, h - covers, 2),
    ];
    const foam = pieces.reduce((sum, { areaMm2, quantity }) => sum + areaMm2 * quantity, 0);
    const [il, iw, ih] = [l - 2 * t, w - 2 * t, h - t * (hasLid ? 2 : 1)];
    return ok({
      pieces,
      measures: measures({
        long_side_height: mm(h - covers),
        short_side_length: mm(w - inside),
        inner_length: mm(il),
        inner_width: mm(iw),
        inner_height: mm(ih),
        inner_volume: mm3(il * iw * ih),
        foam_area: mm2(foam),
        outside_area: mm2(2 * (l * h + w * h) + l * w * (hasLid ? 2 : 1)),
        volume: mm3(l * w * h),
        bevel_from_square_deg: plain(bevel, 'deg'),
      }),
    });
  },
};
