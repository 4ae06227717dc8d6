import { fail, ok } from '../../base/result.ts';
import { rad } from '../../geom/vec.ts';
import { degrees, measures, mm, mm2 } from './measures.ts';
import { warning } from './rolled-sheet.ts';
import type { ShapeKind } from './shape-kind.ts';
import { angle, choice, length } from './size-fields.ts';

/** Steepest lean common saws hold, degrees. */
const STEEPEST_DEG = 45;

/**
 * Two flat panels that meet under an angle inside: each is cut on the plane that halves it, bevel 90 - dihedral / 2 from square. The inner face
 * ends t cot(dihedral / 2) inside the outer one; the cut is t / sin(dihedral / 2) wide. Over 180 degrees the bevel leans the other way.
 * Of two thicknesses with their faces together tan(bevel 1) = (t2 - t1 cos fold) / (t1 sin fold), both bevels adding up to the fold.
 */
export const BEVEL: ShapeKind = {
  name: 'bevel',
  also: ['bevel_of_fold', 'dihedral_bevel'],
  says: 'Bevel of two flat panels that meet under an angle: lean from square, set-back of the inner face, width of the cut.',
  sizes: [
    angle('dihedral_deg', 'angle between the panels, on the side of the foam', { default: 120, over: 0, most: 359.9 }),
    length('thickness', 'thickness of the sheet', {
      default: 10,
      most: 200,
      also: ['thickness_a', 'thickness_1', 't1'],
    }),
    length('other_thickness', 'thickness of the other panel; left out where both are alike', {
      most: 200,
      also: ['thickness_b', 'thickness_2', 't2'],
    }),
    choice('model', 'surface the size is measured on', ['outside', 'middle', 'inside']),
    length('length', 'of the edge', { default: 100 }),
  ],
  develop: (sizes) => {
    const [dihedralDeg, t, long] = ['dihedral_deg', 'thickness', 'length'].map((name) => sizes.num(name));
    const other = sizes.has('other_thickness') ? sizes.num('other_thickness') : t;
    const half = rad(dihedralDeg) / 2;
    const fold = Math.PI - rad(dihedralDeg);
    const isSame = other === t;
    if (!isSame && Math.abs(fold) < 1e-9)
      return fail(
        'shape/sizes',
        'Panels of two thicknesses in one plane need a rebate, not a bevel: change dihedral_deg.',
      );
    const bevelOf = (own: number, mate: number): number =>
      isSame ? fold / 2 : Math.atan2(mate - own * Math.cos(fold), own * Math.sin(Math.abs(fold))) * Math.sign(fold);
    const [first, second] = [bevelOf(t, other), bevelOf(other, t)];
    const setback = t * Math.tan(first);
    const share = { outside: 0, middle: 0.5, inside: 1 }[sizes.word('model')] ?? 0;
    const steep = Math.max(Math.abs(first), Math.abs(second)) > rad(STEEPEST_DEG + 1e-9);
    return ok({
      measures: measures({
        bevel_from_square_deg: degrees(first),
        other_bevel_from_square_deg: isSame ? undefined : degrees(second),
        bevel_a_deg: degrees(first),
        bevel_b_deg: degrees(second),
        bevel_1_deg: degrees(first),
        bevel_2_deg: degrees(second),
        cut_angle_deg: degrees(Math.PI / 2 - first),
        fold_deg: degrees(fold),
        half_dihedral_deg: degrees(half),
        inner_face_setback: mm(setback),
        inner_face_extension: mm(0 - setback),
        outer_face_extension: mm(setback),
        other_inner_face_setback: isSame ? undefined : mm(other * Math.tan(second)),
        middle_setback: mm(setback / 2),
        outer_edge_from_model: mm(share * setback),
        inner_edge_from_model: mm((share - 1) * setback),
        bevel_face_width: mm(t / Math.cos(first)),
        other_bevel_face_width: isSame ? undefined : mm(other / Math.cos(second)),
        glue_area: mm2((2 * long * t) / Math.cos(first)),
      }),
      warnings: [
        ...(steep
          ? [
              warning(
                'shape/steep',
                'The cut leans more than 45 degrees: most saws do not; spread the turn over two edges.',
              ),
            ]
          : []),
        ...(Math.min(first, second) < 0 && fold > 0
          ? [warning('shape/rebate', 'One bevel would lean the wrong way: use a rebate instead.')]
          : []),
      ],
    });
  },
};

/** Groove from the inside of a fold, hinged on a skin: included angle as the fold, width 2 (t - h) tan(fold / 2). */
export const FOLD_GROOVE: ShapeKind = {
  name: 'fold_groove',
  also: ['groove', 'v_groove'],
  says: 'V groove that lets a sheet fold on a skin: its angle, depth and width.',
  sizes: [
    angle('fold_deg', 'how far the sheet is folded', { default: 60, over: 0, most: 175 }),
    length('thickness', 'thickness of the sheet', { default: 10, most: 200 }),
    length('hinge', 'skin that is left', { default: 1, least: 0, most: 200, also: ['hinge_thickness', 'skin'] }),
  ],
  develop: (sizes) => {
    const [foldDeg, t, hinge] = ['fold_deg', 'thickness', 'hinge'].map((name) => sizes.num(name));
    if (!(hinge < t)) return fail('shape/sizes', 'The skin must be thinner than the sheet.');
    const tan = Math.tan(rad(foldDeg) / 2);
    return ok({
      measures: measures({
        groove_angle_deg: degrees(rad(foldDeg)),
        wall_lean_deg: degrees(rad(foldDeg) / 2),
        groove_depth: mm(t - hinge),
        groove_width: mm(2 * (t - hinge) * tan),
        dihedral_deg: degrees(Math.PI - rad(foldDeg)),
        hinge_shift: mm((hinge / 2) * tan),
      }),
      warnings:
        foldDeg > 90
          ? [warning('shape/steep', 'The walls lean more than 45 degrees: part the sheet here instead.')]
          : [],
    });
  },
};
