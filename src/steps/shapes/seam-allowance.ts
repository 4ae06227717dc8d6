import { ok } from '../../base/result.ts';
import { vec2 } from '../../geom/vec.ts';
import { arc } from '../../geom/outline.ts';
import { measures, mm, mm2 } from './measures.ts';
import { edge, piece, side } from './pieces.ts';
import type { ShapeKind } from './shape-kind.ts';
import { choice, length } from './size-fields.ts';

/** An allowance of width d round a convex outline: area A + P d + pi d², perimeter P + 2 pi d (Steiner); mitred corners make it a rectangle again. */
export const SEAM_ALLOWANCE: ShapeKind = {
  name: 'seam_allowance',
  also: ['allowance'],
  says: 'Rectangle with an allowance all round, its corners mitred or round.',
  sizes: [
    length('allowance', 'added outside every edge', { default: 10, also: ['seam_allowance'] }),
    length('length', 'of the rectangle', { default: 200, also: ['rectangle_length', 'width'] }),
    length('height', 'of the rectangle', {
      default: 120,
      also: ['width', 'rectangle_width', 'rectangle_height', 'depth'],
    }),
    choice('corners', 'of the outline that is cut', ['round', 'mitre']),
  ],
  develop: (sizes) => {
    const [d, l, h] = ['allowance', 'length', 'height'].map((name) => sizes.num(name));
    const isRound = sizes.word('corners') === 'round';
    const outline = isRound
      ? [
          side('lower edge', vec2(0, -d), vec2(l, -d)),
          edge('corner 1', arc(vec2(l, 0), d, -Math.PI / 2, Math.PI / 2)),
          side('right edge', vec2(l + d, 0), vec2(l + d, h)),
          edge('corner 2', arc(vec2(l, h), d, 0, Math.PI / 2)),
          side('upper edge', vec2(l, h + d), vec2(0, h + d)),
          edge('corner 3', arc(vec2(0, h), d, Math.PI / 2, Math.PI / 2)),
          side('left edge', vec2(-d, h), vec2(-d, 0)),
          edge('corner 4', arc(vec2(0, 0), d, Math.PI, Math.PI / 2)),
        ]
      : [
          side('lower edge', vec2(-d, -d), vec2(l + d, -d)),
          side('right edge', vec2(l + d, -d), vec2(l + d, h + d)),
          side('upper edge', vec2(l + d, h + d), vec2(-d, h + d)),
          side('left edge', vec2(-d, h + d), vec2(-d, -d)),
        ];
    const corners = [vec2(0, 0), vec2(l, 0), vec2(l, h), vec2(0, h)];
    return ok({
      pieces: [
        piece('piece with allowance', outline, {
          folds: corners.map((from, i) => ({ from, to: corners[(i + 1) % 4], angleDeg: 0 })),
        }),
      ],
      measures: measures({
        area: mm2(l * h),
        perimeter: mm(2 * (l + h)),
        mitred_area: mm2((l + 2 * d) * (h + 2 * d)),
        mitred_perimeter: mm(2 * (l + h) + 8 * d),
        round_corner_area: mm2(l * h + 2 * (l + h) * d + Math.PI * d * d),
        round_corner_perimeter: mm(2 * (l + h) + 2 * Math.PI * d),
      }),
    });
  },
};
