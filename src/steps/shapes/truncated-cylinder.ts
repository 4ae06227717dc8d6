import { fail, ok } from '../../base/result.ts';
import { rad, vec2 } from '../../geom/vec.ts';
import { curve } from '../../geom/outline-curve.ts';
import { degrees, measures, mm, mm2, mm3 } from './measures.ts';
import { edge, piece, rolled, side } from './pieces.ts';
import { ellipseLength, pipePatch, pipePiece } from './pipe-piece.ts';
import { bendWarnings, rolledPipe } from './rolled-sheet.ts';
import type { ShapeKind } from './shape-kind.ts';
import { angle, K, length, STEPS_30, surface, thetas, THICKNESS } from './size-fields.ts';

export const TRUNCATED_CYLINDER: ShapeKind = {
  name: 'truncated_cylinder',
  also: ['cut_cylinder', 'mitred_pipe'],
  says: 'Pipe cut off at an angle: rolled out its cut is a cosine, y = H + (D / 2) cos(theta) tan(cut).',
  sizes: [
    length('diameter', 'across the surface that is named', { default: 100 }),
    length('centreline_height', 'height on the axis; with cut_angle_deg', {
      also: ['mean_height', 'height', 'centerline_height'],
    }),
    angle('cut_angle_deg', 'lean of the cut from square to the axis; with centreline_height', { least: 0, most: 89 }),
    length('h_min', 'least height; with h_max, in place of the other two', {
      least: 0,
      also: ['min_height', 'short_side', 'least_height'],
    }),
    length('h_max', 'greatest height', { also: ['max_height', 'long_side', 'greatest_height'] }),
    thetas(STEPS_30),
    { ...THICKNESS },
    K,
    surface('outside'),
  ],
  develop: (sizes) => {
    const pipe = rolledPipe(sizes);
    if (!pipe.ok) return pipe;
    const { sheet, measured, radius } = pipe.value;
    const hasHeights = sizes.has('h_min') || sizes.has('h_max');
    const hasAngle = sizes.has('centreline_height') || sizes.has('cut_angle_deg');
    if (hasHeights && hasAngle)
      return fail('shape/too-many-sizes', 'Give h_min and h_max, or centreline_height and cut_angle_deg, not both.');
    if (hasHeights && !(sizes.has('h_min') && sizes.has('h_max')))
      return fail('shape/size-missing', 'Give both h_min and h_max.');
    const [height, slope] = hasHeights
      ? [(sizes.num('h_min') + sizes.num('h_max')) / 2, (sizes.num('h_max') - sizes.num('h_min')) / (2 * measured)]
      : [
          sizes.has('centreline_height') ? sizes.num('centreline_height') : 150,
          Math.tan(rad(sizes.has('cut_angle_deg') ? sizes.num('cut_angle_deg') : 45)),
        ];
    if (slope < 0) return fail('shape/sizes', 'h_max must be at least h_min: exchange them.');
    if (!(height - measured * slope >= 0))
      return fail(
        'shape/sizes',
        `The cut would pass through the base: make the height at least ${(measured * slope).toFixed(2)} mm or the angle smaller.`,
      );
    const top = (theta: number): number => height + radius * slope * Math.cos(theta);
    const thetaList = sizes.row('theta_deg').map(rad);
    const atSeam = Math.PI; // on the short side, where the seam is shortest
    const isPointed = top(atSeam) === 0;
    const made = isPointed
      ? piece(
          'pipe',
          [
            side('base', vec2(0, 0), vec2(2 * Math.PI * radius, 0)),
            edge(
              'cut',
              curve((s) => vec2(2 * Math.PI * radius * s, top(atSeam + 2 * Math.PI * s)), 1, 0),
            ),
          ],
          { bend: rolled(radius) },
        )
      : pipePiece('pipe', radius, top, null, { first: atSeam, seam: 'seam' });
    return ok({
      measures: measures({
        stretch_out: mm(2 * Math.PI * radius),
        ordinates: mm(thetaList.map(top)),
        x_of_ordinates: mm(thetaList.map((theta) => radius * theta)),
        area: mm2(2 * Math.PI * radius * height),
        lateral_area: mm2(2 * Math.PI * radius * height),
        cut_angle_deg: degrees(Math.atan(slope)),
        cut_edge_length: mm(ellipseLength(radius, slope)),
        ellipse_major_axis: mm(2 * radius * Math.hypot(1, slope)),
        ellipse_minor_axis: mm(2 * radius),
        cut_face_area: mm2(Math.PI * radius ** 2 * Math.hypot(1, slope)),
        h_min: mm(height - radius * slope),
        h_max: mm(height + radius * slope),
        mean_height: mm(height),
        centreline_height: mm(height),
        neutral_diameter: mm(2 * radius),
        volume: mm3(Math.PI * measured ** 2 * height),
      }),
      pieces: [made],
      patches: [pipePatch('pipe', radius, top, () => 0, atSeam)],
      warnings: bendWarnings(sheet, radius),
    });
  },
};
