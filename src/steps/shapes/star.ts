import { fail, ok } from '../../base/result.ts';
import { vec2, vec3 } from '../../geom/vec.ts';
import { bevelOf, facePieces } from './face-pieces.ts';
import { degrees, measures, mm, mm2, mm3, plain } from './measures.ts';
import { piece, polygonEdges } from './pieces.ts';
import { polyhedron, surfaceArea } from './polyhedron.ts';
import type { ShapeKind } from './shape-kind.ts';
import { count, length } from './size-fields.ts';

/**
 * Regular star {n / k}: r = R cos(pi k / n) / cos(pi (k - 1) / n), point 180 (1 - 2 k / n) degrees, area n R r sin(pi / n). A raised star rises
 * to its middle in 2 n facets.
 */
export const STAR: ShapeKind = {
  name: 'star',
  also: ['regular_star'],
  says: 'Star of n points: the regular one by its step, or any by its inner radius; flat, or raised in facets.',
  sizes: [
    count('points', 'points of the star', { default: 5, least: 3, most: 200, also: ['n'] }),
    length('outer_radius', 'from the middle to a point', { default: 100 }),
    length('inner_radius', 'from the middle to a corner between points, in place of step'),
    count('step', 'each point is joined to the one so many further on; 2 where it is left out', {
      least: 1,
      most: 100,
      also: ['density', 'k'],
    }),
    length('height', 'how far the middle stands up, its points lying flat; 0 for a flat star', {
      default: 0,
      least: 0,
      also: ['rise'],
    }),
  ],
  develop: (sizes) => {
    const [n, outer, height] = [sizes.num('points'), sizes.num('outer_radius'), sizes.num('height')];
    if (sizes.has('inner_radius') && sizes.has('step'))
      return fail('shape/too-many-sizes', 'Give inner_radius or step, not both.');
    const step = sizes.has('step') ? sizes.num('step') : 2;
    if (!sizes.has('inner_radius') && !(2 * step < n))
      return fail(
        'shape/sizes',
        `A star of ${n} points needs a step less than ${n / 2}: give a smaller step or an inner_radius.`,
      );
    const inner = sizes.has('inner_radius')
      ? sizes.num('inner_radius')
      : (outer * Math.cos((Math.PI * step) / n)) / Math.cos((Math.PI * (step - 1)) / n);
    if (!(inner < outer)) return fail('shape/sizes', 'inner_radius must be less than outer_radius.');
    const half = Math.PI / n;
    const edgeLength = Math.hypot(outer - inner * Math.cos(half), inner * Math.sin(half));
    const tip = 2 * Math.atan2(inner * Math.sin(half), outer - inner * Math.cos(half));
    const ring = Array.from({ length: 2 * n }, (_, i) => {
      const [r, turn] = [i % 2 === 0 ? outer : inner, Math.PI / 2 + i * half];
      return vec2(r * Math.cos(turn), r * Math.sin(turn));
    });
    const area = n * outer * inner * Math.sin(half);
    const figures = {
      inner_radius: mm(inner),
      edge: mm(edgeLength),
      point_angle_deg: degrees(tip),
      inner_angle_deg: degrees(2 * Math.PI - (tip + 2 * half)),
      reentrant_angle_deg: degrees(tip + 2 * half),
      area: mm2(area),
      perimeter: mm(2 * n * edgeLength),
      radius_ratio: plain(inner / outer),
      neighbour_tip_distance: mm(2 * outer * Math.sin(half)),
      height_over_all: mm(Math.max(...ring.map(({ y }) => y)) - Math.min(...ring.map(({ y }) => y))),
      width_over_all: mm(Math.max(...ring.map(({ x }) => x)) - Math.min(...ring.map(({ x }) => x))),
    };
    if (height === 0) {
      // An n-sided polygon (step 1) has its inner corners on its sides: they stay, so that every side has two edges.
      return ok({
        measures: measures(figures),
        pieces: [
          piece(
            'star',
            polygonEdges(ring, (i) => ({ name: `edge ${i + 1}` })),
          ),
        ],
      });
    }
    const solid = polyhedron({
      corners: [...ring.map(({ x, y }) => vec3(x, y, 0)), vec3(0, 0, height)],
      faces: ring.map((_, i) => [i, (i + 1) % (2 * n), 2 * n]),
    });
    const edgeTo = (v: number) => solid.edges.find(({ a, b }) => (a === v && b === 2 * n) || (b === v && a === 2 * n));
    const [ridge, valley] = [edgeTo(0), edgeTo(1)];
    const facet = solid.areas[0];
    return ok({
      solid,
      pieces: facePieces(solid, () => 'facet'),
      measures: measures({
        ...figures,
        flat_area: mm2(area),
        area: mm2(surfaceArea(solid)),
        facet_area: mm2(facet),
        ridge_length: mm(Math.hypot(outer, height)),
        valley_length: mm(Math.hypot(inner, height)),
        ridge_dihedral_deg: degrees(ridge?.dihedral ?? NaN),
        valley_dihedral_deg: degrees(valley?.dihedral ?? NaN),
        ridge_bevel_deg: plain(ridge === undefined ? NaN : bevelOf(ridge), 'deg'),
        valley_bevel_deg: plain(valley === undefined ? NaN : bevelOf(valley), 'deg'),
        rim_lean_deg: degrees(Math.atan2(height, (outer * inner * Math.sin(half)) / edgeLength)),
        volume: mm3((area * height) / 3),
      }),
    });
  },
};
