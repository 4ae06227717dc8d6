import { fail, ok } from '../../base/result.ts';
import { rad, vec2, vec3 } from '../../geom/vec.ts';
import { curveSums, curve } from '../../geom/outline-curve.ts';
import { degrees, measures, mm, mm2 } from './measures.ts';
import { edge, piece, rolled, side } from './pieces.ts';
import { bendWarnings, rolledSheet } from './rolled-sheet.ts';
import type { ShapeKind } from './shape-kind.ts';
import { angle, K, length, surface, thetas, THICKNESS } from './size-fields.ts';

/**
 * A round branch that meets a round body: the end of the branch lies on the body, y² + z² = R², so along the branch's axis it ends
 * (sqrt(R² - (r sin theta + e)²) - r cos theta cos(beta)) / sin(beta) from where the axes pass (parallel line development).
 */
export const BRANCH: ShapeKind = {
  name: 'branch',
  also: ['round_branch', 'branch_cope', 'cope', 'tee', 'saddle'],
  says: 'Round branch coped to a round body, square or leaning, in the middle or beside it, and the hole in the body.',
  sizes: [
    length('body_radius', 'outside radius of the body', { default: 50, also: ['header_radius', 'main_radius'] }),
    length('branch_radius', 'radius of the branch, of the surface that is named', { default: 30 }),
    angle('branch_angle_deg', 'between the axes', {
      default: 90,
      least: 15,
      most: 165,
      also: ['angle_deg', 'intersection_angle_deg'],
    }),
    length('offset', 'how far the axes pass one another', { default: 0, least: -100_000 }),
    length('branch_length', 'from where the axes pass to the square end of the branch', {
      default: 150,
      also: ['length', 'height'],
    }),
    thetas([0, 30, 45, 60, 90]),
    { ...THICKNESS },
    K,
    surface('outside'),
  ],
  develop: (sizes) => {
    const sheet = rolledSheet(sizes);
    const [body, measured, offset, long] = ['body_radius', 'branch_radius', 'offset', 'branch_length'].map((name) =>
      sizes.num(name),
    );
    const radius = measured + sheet.toNeutral;
    if (!(measured + sheet.toInside >= 0) || !(radius > 0))
      return fail(
        'shape/too-thick',
        'The sheet does not fit into the branch: take a thinner sheet or a larger branch.',
      );
    if (Math.max(radius, measured + sheet.toOutside) + Math.abs(offset) > body)
      return fail(
        'shape/sizes',
        'The branch would reach past the side of the body: make branch_radius and offset together no more than body_radius.',
      );
    const beta = rad(sizes.num('branch_angle_deg'));
    const across = (theta: number): number => radius * Math.sin(theta) + offset;
    const root = (theta: number): number => Math.sqrt(Math.max(0, (body - across(theta)) * (body + across(theta))));
    const saddle = (theta: number): number =>
      (root(theta) - radius * Math.cos(theta) * Math.cos(beta)) / Math.sin(beta);
    const grid = Array.from({ length: 1441 }, (_, i) => saddle((Math.PI * i) / 720));
    const [deep, high] = [Math.min(...grid), Math.max(...grid)];
    if (!(long > high))
      return fail(
        'shape/sizes',
        `The branch would end inside the body: make branch_length more than ${high.toFixed(2)} mm.`,
      );
    const thetaList = sizes.row('theta_deg').map(rad);
    const wide = 2 * Math.PI * radius;
    const first = Math.PI; // the seam lies on the far side of a leaning branch
    const cope = (s: number) => vec2(wide * s, long - saddle(first + 2 * Math.PI * s));
    // Where a branch is as wide as the body its end has a corner.
    const corners = [-0.5, 0.5]
      .map((turn) =>
        Math.abs(Math.abs(across(Math.PI * turn)) - body) < 1e-9 * body ? (turn === 0.5 ? 0.75 : 0.25) : null,
      )
      .filter((one) => one !== null);
    const sorted = [...corners].sort((a, b) => a - b);
    const top = curve(cope, 0, 1, sorted);
    const branch = piece(
      'branch',
      [
        side('square end', vec2(0, 0), vec2(wide, 0)),
        side('end', vec2(wide, 0), cope(1), { seam: 'seam' }),
        edge('cope', curve(cope, 1, 0, sorted.map((s) => s).reverse())),
        side('start', cope(0), vec2(0, 0), { seam: 'seam' }),
      ],
      { bend: rolled(radius) },
    );
    // The hole on the body, rolled out: x round it, y along its axis.
    const hole = (theta: number) =>
      vec2(
        body * Math.asin(Math.max(-1, Math.min(1, across(theta) / body))),
        saddle(theta) * Math.cos(beta) - radius * Math.cos(theta) * Math.sin(beta),
      );
    const holePoints = Array.from({ length: 1441 }, (_, i) => hole((Math.PI * i) / 720));
    const [xs, ys] = [holePoints.map(({ x }) => x), holePoints.map(({ y }) => y)];
    const holeSums = curveSums(hole, 0, 2 * Math.PI);
    const holeCurve = holeSums.swept > 0 ? curve(hole, 0, 2 * Math.PI) : curve(hole, 2 * Math.PI, 0);
    const template = piece('hole in the body', [edge('hole', holeCurve)], { bend: rolled(body) });
    return ok({
      measures: measures({
        height_of_saddle: mm(thetaList.map(saddle)),
        ordinates: mm(thetaList.map((theta) => long - saddle(theta))),
        x_of_ordinates: mm(thetaList.map((theta) => radius * theta)),
        cope_depth: mm(high - deep),
        least_height: mm(deep),
        greatest_height: mm(high),
        stretch_out: mm(wide),
        cope_length: mm(top.lengthMm),
        branch_area: mm2(branch.areaMm2),
        area: mm2(branch.areaMm2),
        hole_across: mm(Math.max(...xs) - Math.min(...xs)),
        hole_along: mm(Math.max(...ys) - Math.min(...ys)),
        hole_area: mm2(template.areaMm2),
        hole_perimeter: mm(holeSums.length),
        branch_angle_deg: degrees(beta),
      }),
      pieces: [branch, template],
      patches: [
        {
          piece: 'branch',
          solid: (u, v) => {
            const theta = first + 2 * Math.PI * u;
            const s = long + (saddle(theta) - long) * v;
            const out = radius * Math.cos(theta);
            return vec3(
              s * Math.cos(beta) - out * Math.sin(beta),
              across(theta),
              s * Math.sin(beta) + out * Math.cos(beta),
            );
          },
          flat: (u, v) => vec2(wide * u, (long - saddle(first + 2 * Math.PI * u)) * v),
        },
      ],
      warnings: bendWarnings(sheet, radius),
    });
  },
};
