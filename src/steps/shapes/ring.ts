import { fail, ok } from '../../base/result.ts';
import { vec2 } from '../../geom/vec.ts';
import { arc } from '../../geom/outline.ts';
import { degrees, measures, mm, mm2 } from './measures.ts';
import { edge, piece } from './pieces.ts';
import { sectorPiece } from './sector.ts';
import type { ShapeKind } from './shape-kind.ts';
import { angle, count, length } from './size-fields.ts';

/** Flat ring, or part of one, whole or of equal segments: chords 2 R sin(angle / 2), a segment as high as R - r cos(angle / 2). */
export const RING: ShapeKind = {
  name: 'ring',
  also: ['flat_ring', 'ring_segments', 'annulus'],
  says: 'Flat ring, whole or of equal segments that are laid on the sheet more closely.',
  sizes: [
    length('outer_radius', 'radius of the outer edge', { default: 100 }),
    length('inner_radius', 'radius of the inner edge; 0 for a disc', { default: 60, least: 0 }),
    count('segments', 'equal segments', { default: 8, also: ['pieces', 'number_of_segments'] }),
    angle('angle_deg', 'how far round it goes', {
      default: 360,
      over: 0,
      most: 360,
      also: ['ring_angle_deg', 'sweep_deg'],
    }),
  ],
  develop: (sizes) => {
    const [outer, inner, segments] = [sizes.num('outer_radius'), sizes.num('inner_radius'), sizes.num('segments')];
    if (!(inner < outer)) return fail('shape/sizes', 'inner_radius must be less than outer_radius.');
    const whole = (Math.PI * sizes.num('angle_deg')) / 180;
    const turn = whole / segments;
    const area = (whole / 2) * (outer - inner) * (outer + inner);
    const isWhole = segments === 1 && sizes.num('angle_deg') === 360;
    // One segment that does not go round has nothing to be joined to.
    const isLone = segments === 1 && sizes.num('angle_deg') < 360;
    const origin = vec2(0, 0);
    const made = isWhole
      ? piece(
          'ring',
          [edge('outer', arc(origin, outer, 0, 2 * Math.PI))],
          inner > 0 ? { holes: [[edge('inner', arc(origin, inner, 0, -2 * Math.PI))]] } : {},
        )
      : sectorPiece(
          'segment',
          { outer, inner, angle: turn },
          { quantity: segments, ...(isLone ? {} : { seam: 'joint' }), outerName: 'outer', innerName: 'inner' },
        );
    // Over half a turn a segment is as wide as the ring and reaches down past its middle.
    const isWide = turn > Math.PI;
    const height = isWide ? outer - outer * Math.cos(turn / 2) : outer - inner * Math.cos(turn / 2);
    return ok({
      measures: measures({
        ring_area: mm2(area),
        area: mm2(area),
        segment_area: mm2(area / segments),
        segment_angle_deg: degrees(turn),
        segment_outer_chord: mm(2 * outer * Math.sin(turn / 2)),
        segment_inner_chord: mm(2 * inner * Math.sin(turn / 2)),
        segment_outer_arc: mm(outer * turn),
        segment_inner_arc: mm(inner * turn),
        segment_bounding_height: mm(height),
        segment_bounding_width: mm(isWide ? 2 * outer : 2 * outer * Math.sin(turn / 2)),
        segment_outer_sagitta: mm(2 * outer * Math.sin(turn / 4) ** 2),
        segment_inner_sagitta: mm(2 * inner * Math.sin(turn / 4) ** 2),
        mitre_angle_deg: degrees(turn / 2),
        ring_width: mm(outer - inner),
        outer_circumference: mm(outer * whole),
        inner_circumference: mm(inner * whole),
        middle_circumference: mm(((outer + inner) / 2) * whole),
      }),
      pieces: [made],
    });
  },
};
