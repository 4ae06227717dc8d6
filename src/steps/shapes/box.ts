import { fail, ok } from '../../base/result.ts';
import { vec2, vec3 } from '../../geom/vec.ts';
import type { ShapeFaces, ShapePiece } from '../../model/shape.ts';
import { measures, mm, mm2, mm3, plain } from './measures.ts';
import { piece, polygonEdges } from './pieces.ts';
import { SHEET } from './polygon-solid.ts';
import type { ShapeKind } from './shape-kind.ts';
import { choice, length } from './size-fields.ts';

/** Box of slabs glued at butt or mitred corners: the sizes every slab is cut to. */
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
    const slab = (name: string, a: number, b: number, quantity: number): ShapePiece =>
      piece(
        name,
        polygonEdges([vec2(0, 0), vec2(a, 0), vec2(a, b), vec2(0, b)], (i) => ({
          name: `side ${i + 1}`,
          bevelDeg: bevel,
        })),
        { quantity },
      );
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
      // Mitred slabs are the faces of the box; at butt corners no slab is as large as its face.
      ...(isMitred ? { solid: cuboid(l, w, h, !hasLid) } : {}),
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

/** The faces of a box from the origin on. @param isOpen  without its upper face. */
export const cuboid = (a: number, b: number, c: number, isOpen: boolean): ShapeFaces => ({
  corners: [0, c].flatMap((z) => [vec3(0, 0, z), vec3(a, 0, z), vec3(a, b, z), vec3(0, b, z)]),
  faces: [
    [0, 3, 2, 1],
    ...[0, 1, 2, 3].map((i) => [i, (i + 1) % 4, 4 + ((i + 1) % 4), 4 + i]),
    ...(isOpen ? [] : [[4, 5, 6, 7]]),
  ],
});
