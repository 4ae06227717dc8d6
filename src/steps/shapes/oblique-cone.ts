import { fail, ok } from '../../base/result.ts';
import { length2, length3, rad, sub2, sub3, vec3, type Vec2, type Vec3 } from '../../geom/vec.ts';
import { curve, curveSums } from '../../geom/outline-curve.ts';
import { degrees, measures, mm, mm2, mm3 } from './measures.ts';
import { edge, piece, side } from './pieces.ts';
import { bendWarnings, rolledSheet } from './rolled-sheet.ts';
import type { ShapeKind } from './shape-kind.ts';
import { K, length, surface, thetas, THICKNESS } from './size-fields.ts';
import { offsetCone, unrolledCone, type OffsetCone } from './unrolled-cone.ts';

/**
 * Cone with its apex beside the middle of the base, whole or cut off level: the true length of the element at theta is
 * sqrt(h² + R² + e² - 2 R e cos theta), e the offset, theta from the side the apex lies over (triangulation; the angles between elements by
 * integral). Of sheet it is laid flat by its neutral surface, which is no cone any more but a developable surface beside one. A transition between two round pipes with parallel axes is the same cone cut off.
 */
export const OBLIQUE_CONE: ShapeKind = {
  name: 'oblique_cone',
  also: ['oblique_frustum', 'scalene_cone', 'eccentric_cone'],
  says: 'Oblique cone, or its frustum between two level circles: each element in its true length.',
  sizes: [
    length('base_radius', 'radius of the base, of the surface that is named', {
      default: 60,
      also: ['large_radius', 'bottom_radius'],
    }),
    length('height', 'between base and top, or apex where top_radius is 0', { default: 120 }),
    length('offset', 'how far the middle of the top, or the apex, lies beside the middle of the base', {
      default: 30,
      least: 0,
      also: ['apex_offset', 'eccentricity'],
    }),
    length('top_radius', 'radius of the top; 0 for an apex', { default: 0, least: 0, also: ['small_radius'] }),
    thetas(Array.from({ length: 7 }, (_, i) => 30 * i)),
    { ...THICKNESS },
    K,
    surface('outside'),
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
    const sheet = rolledSheet(sizes);
    const share = top / base;
    const [apexHeight, apexOffset] = [height / (1 - share), offset / (1 - share)];
    const apex = vec3(apexOffset, 0, apexHeight);
    const rim = (t: number): Vec3 => vec3(base * Math.cos(t), base * Math.sin(t), 0);
    const speed = (t: number): Vec3 => vec3(-base * Math.sin(t), base * Math.cos(t), 0);
    const acceleration = (t: number): Vec3 => vec3(-base * Math.cos(t), -base * Math.sin(t), 0);
    // The seam lies on the shortest element, theta 0.
    const cone = unrolledCone(apex, rim, speed, 0, 2 * Math.PI);
    const whole = cone.turn(2 * Math.PI);
    if (!(whole < 2 * Math.PI - 1e-6))
      return fail('shape/sizes', 'The development would lap over itself: make the shape higher.');
    const first = (Math.PI - whole) / 2;
    const beside = (distance: number): OffsetCone =>
      offsetCone(cone, apex, rim, speed, acceleration, { from: 0, to: 2 * Math.PI, distance, first });
    const neutral = beside(sheet.toNeutral);
    // Rims are cut square to the wall, so every surface of the sheet has its rims as far along its generators; a tip is cut where they meet.
    const tip = top > 0 ? 0 : farthestPinch(neutral);
    const topAt = (t: number): number => (top > 0 ? share * cone.reach(t) : tip);
    const room = top > 0 ? [beside(sheet.toInside), neutral] : [];
    if (room.some((one) => AROUND.some((t) => one.pinch(t) > topAt(t))) || AROUND.some((t) => tip >= cone.reach(t)))
      return fail(
        'shape/too-thick',
        `A wall of ${sheet.thickness} mm leaves no room inside: take a thinner sheet or larger radii.`,
      );
    const place = (t: number, v = 0): Vec2 => neutral.flat(t, cone.reach(t) + (topAt(t) - cone.reach(t)) * v);
    // Where all generators meet in one place the top is no curve.
    const tipPlace = place(0, 1);
    const hasTop = [1, 2, 3, 4, 5, 6].some((t) => length2(sub2(place(t, 1), tipPlace)) > 1e-9 * base);
    const topCurve = hasTop ? curve((t) => place(t, 1), 2 * Math.PI, 0) : null;
    const edges = [
      edge(
        'base',
        curve((t) => place(t), 0, 2 * Math.PI),
      ),
      side('end', place(2 * Math.PI), topCurve?.from ?? tipPlace, { seam: 'seam' }),
      ...(topCurve === null ? [] : [edge('top', topCurve)]),
      side('start', tipPlace, place(0), { seam: 'seam' }),
    ];
    const thetaList = sizes.row('theta_deg').map(rad);
    const element = (t: number): number => length3(sub3(rim(t), apex));
    const areaWhole = cone.area(2 * Math.PI);
    const elements = thetaList.map(element);
    // As tight as its smaller rim, or as its base where it runs out in a tip.
    const leastRadius = top > 0 ? top + sheet.toNeutral : base + sheet.toNeutral;
    const made = piece('cone', edges, {
      bend: { kind: 'rolled' },
      folds: Array.from({ length: 11 }, (_, i) => ({
        from: place(((i + 1) * Math.PI) / 6, 1),
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
        area: mm2(sheet.toNeutral === 0 ? areaWhole * (1 - share * share) : made.areaMm2),
        base_circumference: mm(2 * Math.PI * base),
        top_circumference: top > 0 ? mm(2 * Math.PI * top) : undefined,
        base_edge_length: mm(curveSums((t) => place(t), 0, 2 * Math.PI).length),
        tip_opening: top === 0 && topCurve !== null ? mm(topCurve.lengthMm) : undefined,
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
            const t = 2 * Math.PI * u;
            return neutral.solid(t, cone.reach(t) + (topAt(t) - cone.reach(t)) * v);
          },
          flat: (u, v) => place(2 * Math.PI * u, v),
        },
      ],
      warnings: bendWarnings(sheet, leastRadius),
    });
  },
};

/** Places round the base at which generators are looked at. */
const AROUND: readonly number[] = Array.from({ length: 720 }, (_, i) => (i * Math.PI) / 360);

const farthestPinch = (cone: OffsetCone): number =>
  AROUND.reduce((most, t) => Math.max(most, cone.pinch(t)), -Infinity);
