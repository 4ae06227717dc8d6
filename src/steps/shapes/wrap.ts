import { fail, ok } from '../../base/result.ts';
import { vec2, vec3 } from '../../geom/vec.ts';
import type { ShapePatch, ShapePiece } from '../../model/shape.ts';
import { measures, mm, mm2, mm3, percent } from './measures.ts';
import { piece, rolled, side } from './pieces.ts';
import { bendWarnings, rolledSheet, warning } from './rolled-sheet.ts';
import type { ShapeKind } from './shape-kind.ts';
import { count, K, length, surface, THICKNESS } from './size-fields.ts';

/**
 * Sheet rolled round a pipe or dowel, edges meeting: as long as its neutral surface, L = pi (D + 2 k t) with D across the inside (bend allowance
 * BA = angle (r + k t) of sheet-metal handbooks over a whole turn). Layer n lies on the outside of the one before: its D is 2 t (n - 1) more.
 */
export const WRAP: ShapeKind = {
  name: 'wrap',
  also: ['pipe_wrap', 'cylinder_wrap', 'cylinder', 'pipe'],
  says: 'Sheet rolled round a pipe, edges meeting, in one or more layers: each as long as its neutral surface.',
  sizes: [
    length('diameter', 'across the surface that is named, the inside of the foam being the outside of the pipe', {
      default: 33.7,
      also: [
        { name: 'outer_diameter', sets: { surface: 'outside' } },
        { name: 'outside_diameter', sets: { surface: 'outside' } },
        { name: 'inner_diameter', sets: { surface: 'inside' } },
        { name: 'inside_diameter', sets: { surface: 'inside' } },
        { name: 'pipe_diameter', sets: { surface: 'inside' } },
        { name: 'pipe_outer_diameter', sets: { surface: 'inside' } },
        { name: 'pipe_outside_diameter', sets: { surface: 'inside' } },
        { name: 'rod_diameter', sets: { surface: 'inside' } },
        { name: 'core_diameter', sets: { surface: 'inside' } },
        { name: 'mid_diameter', sets: { surface: 'middle' } },
      ],
    }),
    surface('inside'),
    { ...THICKNESS, default: 6 },
    K,
    length('length', 'along the pipe', { default: 300, also: ['height', 'width'] }),
    count('layers', 'wraps one over the other; the size speaks of the innermost', { default: 1, most: 50 }),
    length('overlap', 'what one end lies over the other, added to the length', { default: 0, least: 0 }),
  ],
  develop: (sizes) => {
    const sheet = rolledSheet(sizes);
    const [thickness, long, layers, overlap] = ['thickness', 'length', 'layers', 'overlap'].map((name) =>
      sizes.num(name),
    );
    const inside = sizes.num('diameter') + 2 * sheet.toInside;
    if (!(inside >= 0))
      return fail(
        'shape/too-thick',
        `A sheet of ${thickness} mm does not fit into ${sizes.num('diameter')} mm: take a thinner sheet or a larger diameter.`,
      );
    if (!(inside + 2 * sheet.k * thickness > 0))
      return fail(
        'shape/too-thick',
        'Nothing is left inside for the sheet to be rolled round: make the diameter larger.',
      );
    const girth = (k: number, layer = 0): number => Math.PI * (inside + 2 * thickness * (layer + k));
    const lengths = Array.from({ length: layers }, (_, layer) => girth(sheet.k, layer) + overlap);
    const pieces: ShapePiece[] = lengths.map((wide, layer) => {
      const [a, b, c, d] = [vec2(0, 0), vec2(wide, 0), vec2(wide, long), vec2(0, long)];
      const seam = layers === 1 ? 'seam' : `seam ${layer + 1}`;
      return piece(
        layers === 1 ? 'wrap' : `layer ${layer + 1}`,
        [side('bottom', a, b), side('end', b, c, { seam }), side('top', c, d), side('start', d, a, { seam })],
        {
          bend: rolled((wide - overlap) / (2 * Math.PI)),
          folds: overlap > 0 ? [{ from: vec2(wide - overlap, 0), to: vec2(wide - overlap, long), angleDeg: 0 }] : [],
        },
      );
    });
    const patches: ShapePatch[] =
      overlap > 0
        ? []
        : pieces.map(({ name }, layer) => {
            const radius = lengths[layer] / (2 * Math.PI);
            return {
              piece: name,
              solid: (u, v) => vec3(radius * Math.cos(2 * Math.PI * u), radius * Math.sin(2 * Math.PI * u), long * v),
              flat: (u, v) => vec2(lengths[layer] * u, long * v),
            };
          });
    const outsideDiameter = inside + 2 * thickness * layers;
    const neutralRadius = girth(sheet.k) / (2 * Math.PI);
    return ok({
      measures: measures({
        wrap_length: mm(lengths[0]),
        stretch_out: mm(lengths[0]),
        neutral_diameter: mm(2 * neutralRadius),
        inner: mm(girth(0)),
        mid: mm(girth(0.5)),
        outer: mm(girth(1)),
        [`K${sheet.k.toFixed(2)}`]: mm(girth(sheet.k)),
        'K0.33': mm(girth(0.33)),
        'K0.44': mm(girth(0.44)),
        'K0.50_mid': mm(girth(0.5)),
        outer_minus_mid: mm(girth(1) - girth(0.5)),
        mid_minus_inner: mm(girth(0.5) - girth(0)),
        outer_minus_inner: mm(girth(1) - girth(0)),
        inner_diameter: mm(inside),
        outer_diameter: mm(inside + 2 * thickness),
        built_up_diameter: mm(outsideDiameter),
        area: mm2(lengths[0] * long),
        total_area: mm2(lengths.reduce((sum, wide) => sum + wide * long, 0)),
        layer_lengths: mm(lengths),
        step_between_layers: mm(2 * Math.PI * thickness),
        volume: mm3((Math.PI / 4) * (outsideDiameter ** 2 - inside ** 2) * long),
        outer_strain_percent: percent((100 * (1 - sheet.k) * thickness) / neutralRadius),
        inner_squash_percent: percent((100 * sheet.k * thickness) / neutralRadius),
      }),
      pieces,
      patches,
      warnings: [
        ...bendWarnings(sheet, neutralRadius),
        ...(overlap > girth(sheet.k)
          ? [warning('shape/overlap', 'The overlap is longer than the wrap: use two layers instead.')]
          : []),
      ],
    });
  },
};
