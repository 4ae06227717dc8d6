import { fail, ok } from '../../base/result.ts';
import { vec2 } from '../../geom/vec.ts';
import { curve } from '../../geom/outline-curve.ts';
import { integrate } from '../../geom/integrate.ts';
import { degrees, measures, mm, mm2, plain } from './measures.ts';
import { edge, piece, polygonEdges } from './pieces.ts';
import { BASE_SIZES, baseRadius, tooMany } from './polygon-solid.ts';
import type { ShapeKind } from './shape-kind.ts';
import { length } from './size-fields.ts';

/** Regular polygon (mensuration tables): side 2 R sin(pi / n), apothem R cos(pi / n), area n a r / 2; a frame of it has mitres of 180 / n. */
export const REGULAR_POLYGON: ShapeKind = {
  name: 'regular_polygon',
  also: ['polygon'],
  says: 'Regular polygon: side, apothem, area, corners, and the mitre of a frame round it.',
  sizes: BASE_SIZES,
  develop: (sizes) => {
    const sides = sizes.num('sides');
    const radius = baseRadius(sizes, sides);
    if (radius === null) return tooMany();
    const half = Math.PI / sides;
    const [side, apothem] = [2 * radius * Math.sin(half), radius * Math.cos(half)];
    const points = Array.from({ length: sides }, (_, i) => {
      const turn = -Math.PI / 2 + (2 * i - 1) * half;
      return vec2(radius * Math.cos(turn), radius * Math.sin(turn));
    });
    return ok({
      pieces: [
        piece(
          'polygon',
          polygonEdges(points, (i) => ({ name: `side ${i + 1}` })),
        ),
      ],
      measures: measures({
        side: mm(side),
        apothem: mm(apothem),
        inradius: mm(apothem),
        circumradius: mm(radius),
        across_flats: mm(2 * apothem),
        across_corners: mm(sides % 2 === 0 ? 2 * radius : 2 * radius * Math.cos(half / 2)),
        perimeter: mm(sides * side),
        area: mm2((sides * side * apothem) / 2),
        interior_angle_deg: degrees(Math.PI - 2 * half),
        central_angle_deg: degrees(2 * half),
        mitre_angle_deg: degrees(half),
        perimeter_short_of_circle_percent: plain(100 * (1 - Math.sin(half) / half), '%'),
        sagitta: mm(radius - apothem),
      }),
    });
  },
};

/** Ellipse: area pi a b, perimeter 4 a E(e) (tables of elliptic integrals). */
export const ELLIPSE: ShapeKind = {
  name: 'ellipse',
  also: ['oval'],
  says: 'Ellipse: area, perimeter and curvature at its ends.',
  sizes: [
    length('major_axis', 'longer diameter', { default: 160, also: ['length'] }),
    length('minor_axis', 'shorter diameter', { default: 100, also: ['width'] }),
  ],
  develop: (sizes) => {
    const [a, b] = [sizes.num('major_axis') / 2, sizes.num('minor_axis') / 2];
    if (!(b <= a)) return fail('shape/sizes', 'major_axis must be at least minor_axis: exchange them.');
    const around = curve((t) => vec2(a * Math.cos(t), b * Math.sin(t)), 0, 2 * Math.PI);
    return ok({
      pieces: [piece('ellipse', [edge('rim', around)])],
      measures: measures({
        area: mm2(Math.PI * a * b),
        perimeter: mm(4 * integrate((t) => Math.hypot(a * Math.sin(t), b * Math.cos(t)), 0, Math.PI / 2)),
        eccentricity: plain(Math.sqrt(1 - (b / a) ** 2)),
        focal_distance: mm(Math.sqrt((a - b) * (a + b))),
        radius_at_major_end: mm((b * b) / a),
        radius_at_minor_end: mm((a * a) / b),
      }),
    });
  },
};
