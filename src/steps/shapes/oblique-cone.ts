import { fail, ok } from '../../base/result.ts';
import { length3, rad, sub3, vec2, vec3, type Vec2, type Vec3 } from '../../geom/vec.ts';
import { curve, curveSums } from '../../geom/outline-curve.ts';
import { degrees, measures, mm, mm2, mm3 } from './measures.ts';
import { edge, piece, side } from './pieces.ts';
import type { ShapeKind } from './shape-kind.ts';
import { length, thetas } from './size-fields.ts';
import { conePlace, unrolledCone } from './unrolled-cone.ts';

/**
 * Cone with its apex beside the middle of the base, whole or cut off level: the true length of the element at theta is
 * sqrt(h² + R² + e² - 2 R e cos theta), e the offset, theta from the side the apex lies over (triangulation; the angles between elements by
 * integral). A transition between two round pipes with parallel axes is the same cone cut off.
 */
export const OBLIQUE_CONE: ShapeKind = {
  name: 'oblique_cone',
  also: ['oblique_frustum', 'scalene_cone', 'eccentric_cone'],
  says: 'Oblique cone, or its frustum between two level circles: each element in its true length.',
  sizes: [
    length('base_radius', 'radius of the base', { default: 60, also: ['large_radius', 'bottom_radius'] }),
    length('height', 'between base and top, or apex where top_radius is 0', { default: 120 }),
    length('offset', 'how far the middle of the top, or the apex, lies beside the middle of the base', {
      default: 30,
      least: 0,
      also: ['apex_offset', 'eccentricity'],
    }),
    length('top_radius', 'radius of the top; 0 for an apex', { default: 0, least: 0, also: ['small_radius'] }),
    thetas(Array.from({ length: 7 }, (_, i) => 30 * i)),
  ],
  develop: (sizes) => {
    const [base, height, offset, top] = ['base_radius', 'height', 'offset', 'top_radius'].map((name) =>
      sizes.num(name),
    );
    if (!(top < base))
      return fail(
        'shape/sizes',
        'top_radius must be less than base_radius: turn the shape over, or use a truncated cylinder for equal circles.',
      );
    const share = top / base;
    const [apexHeight, apexOffset] = [height / (1 - share), offset / (1 - share)];
    const apex = vec3(apexOffset, 0, apexHeight);
    const rim = (t: number): Vec3 => vec3(base * Math.cos(t), base * Math.sin(t), 0);
    const speed = (t: number): Vec3 => vec3(-base * Math.sin(t), base * Math.cos(t), 0);
    // The seam lies on the shortest element, theta 0.
    const cone = unrolledCone(apex, rim, speed, 0, 2 * Math.PI);
    const whole = cone.turn(2 * Math.PI);
    if (!(whole < 2 * Math.PI - 1e-6))
      return fail('shape/sizes', 'The development would lap over itself: make the shape higher.');
    const first = (Math.PI - whole) / 2;
    const place = (t: number, s = 1): Vec2 => conePlace(cone, t, s, first);
    const edges = [
      edge(
        'base',
        curve((t) => place(t), 0, 2 * Math.PI),
      ),
      side('end', place(2 * Math.PI), top > 0 ? place(2 * Math.PI, share) : vec2(0, 0), { seam: 'seam' }),
      ...(top > 0
        ? [
            edge(
              'top',
              curve((t) => place(t, share), 2 * Math.PI, 0),
            ),
          ]
        : []),
      side('start', top > 0 ? place(0, share) : vec2(0, 0), place(0), { seam: 'seam' }),
    ];
    const thetaList = sizes.row('theta_deg').map(rad);
    const element = (t: number): number => length3(sub3(rim(t), apex));
    const areaWhole = cone.area(2 * Math.PI);
    const elements = thetaList.map(element);
    const made = piece('cone', edges, {
      bend: { kind: 'rolled' },
      folds: Array.from({ length: 11 }, (_, i) => ({
        from: place(((i + 1) * Math.PI) / 6, share),
        to: place(((i + 1) * Math.PI) / 6),
        angleDeg: 0,
      })),
    });
    const [long, short] = [element(Math.PI), element(0)];
    return ok({
      measures: measures({
        true_lengths: mm(elements.map((one) => one * (1 - share))),
        element_lengths: mm(elements),
        top_element_lengths: top > 0 ? mm(elements.map((one) => one * share)) : undefined,
        element_angles_deg: degrees(
          thetaList.map((t) => cone.turn(((t % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI))),
        ),
        x_of_ordinates: mm(thetaList.map((t) => base * t)),
        longest: mm(long * (1 - share)),
        shortest: mm(short * (1 - share)),
        longest_element: mm(long),
        shortest_element: mm(short),
        sector_angle_deg: degrees(whole),
        development_angle_deg: degrees(whole),
        area: mm2(areaWhole * (1 - share * share)),
        base_circumference: mm(2 * Math.PI * base),
        top_circumference: top > 0 ? mm(2 * Math.PI * top) : undefined,
        base_edge_length: mm(curveSums((t) => place(t), 0, 2 * Math.PI).length),
        apex_height: mm(apexHeight),
        apex_offset: mm(apexOffset),
        volume: mm3((Math.PI / 3) * height * (base * base + base * top + top * top)),
        lean_deg: degrees(Math.atan2(offset, height)),
      }),
      pieces: [made],
      patches: [
        {
          piece: 'cone',
          solid: (u, v) => {
            const p = rim(2 * Math.PI * u);
            const s = 1 - (1 - share) * v;
            return vec3(apex.x + (p.x - apex.x) * s, apex.y + (p.y - apex.y) * s, apex.z + (p.z - apex.z) * s);
          },
          flat: (u, v) => place(2 * Math.PI * u, 1 - (1 - share) * v),
        },
      ],
    });
  },
};
