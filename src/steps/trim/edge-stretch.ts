import { nearShortestLine } from '../../mesh/lines/shortest-line.ts';
import type { Surface } from '../../mesh/surface.ts';
import type { TrimPlace } from '../../model/trim.ts';
import { centreAt, type FlatCentre } from './flat-centre.ts';
import type { LaidEdge } from './laid-edges.ts';

/**
 * How much longer an edge of a strip must become, per cent, place by place: its true length over the surface between two laid places against the same on the
 * flat strip. The middle keeps its length, so this is what the surface's own (Gaussian) curvature under half the width asks: about `-K d^2 / 2`, d the distance
 * of the edge from the middle. Both lengths are summed over windows, since the corners of a mesh part what lies to their left from what lies to their right.
 * @param mm       distance of the edge, left > 0.
 * @param windowMm length of middle that one figure stands for.
 * @param startArc where the strip begins along its middle, mm: places are told from there.
 */
export function edgeStretch(
  surface: Surface,
  centre: FlatCentre,
  { ways, places: laid }: LaidEdge,
  mm: number,
  windowMm: number,
  startArc: number,
): readonly TrimPlace[] {
  const found: TrimPlace[] = [];
  let [flat, round, from] = [0, 0, 0];
  for (let i = 1; i < ways.length; i += 1) {
    const [p, q] = [laid[i - 1], laid[i]];
    const [a, b] = [centreAt(centre, ways[i - 1]), centreAt(centre, ways[i])];
    if (p !== null && q !== null && !p.isOff && !q.isOff) {
      const piece = nearShortestLine(surface, p.point, q.point);
      if (piece.ok) {
        flat += b.arc - a.arc - mm * (b.heading - a.heading);
        round += piece.value.lengthMm;
      }
    }
    const span = b.arc - centreAt(centre, ways[from]).arc;
    const rest = centreAt(centre, ways[ways.length - 1]).arc - b.arc;
    if (i + 1 < ways.length && (span < windowMm || rest < windowMm / 2)) continue;
    if (flat > 0) found.push({ atMm: b.arc - span / 2 - startArc, value: 100 * (round / flat - 1) });
    [flat, round, from] = [0, 0, i];
  }
  return found;
}
