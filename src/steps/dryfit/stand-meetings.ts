import { dot3, sub3 } from '../../geom/vec.ts';
import type { Skin } from './cut-edge.ts';
import type { Meeting } from './measure-seam.ts';
import { commonPlaces, heightOf, placed, type EdgePair, type Placed } from './placed-edge.ts';

/**
 * How the two sides of a rebate meet: what each of their four edges lacks, in its own surface, to the surface it ends on. The standing side ends
 * on the inner surface of the other, which runs on to the outer surface of the standing one and is flush with it there:
 *
 *     through  ==========+| <- flush        inner and outer as the bend has them: on a convex fold the face is outside
 *              ------+---|
 *                    |   |
 *                  standing
 *
 * What is missing outside counts at the skin that is outside, the standing side's inner edge at the other. Nothing stands proud of anything.
 * @returns at the face and at the back.
 */
export function standMeetings(edges: EdgePair, standSide: 0 | 1, stop: number): readonly [Meeting, Meeting] {
  const sides = [edges.a, edges.b];
  const [standing, through] = [sides[standSide], sides[1 - standSide]];
  const places = (skin: Skin) => {
    const pair = commonPlaces(edges, skin, stop);
    const [stands, runs] = [pair[standSide], pair[1 - standSide]];
    return {
      stands: placed(standing, edges.i, stands, heightOf(standing, skin)),
      runs: placed(through, edges.i, runs, heightOf(through, skin)),
      standsOn: placed(standing, edges.i, { f: stands.f, out: 0 }, 0),
      runsOn: placed(through, edges.i, { f: runs.f, out: 0 }, 0),
    };
  };
  const [face, back] = [places('face'), places('back')];
  const isConvex = dot3(face.stands.outward, face.runs.normal) > 0;
  const inner = heightOf(through, isConvex ? 'back' : 'face');
  const outer = heightOf(standing, isConvex ? 'face' : 'back');
  const stands = [face, back].map((at) => lackTo(at.stands, at.runsOn, inner));
  const runs = [face, back].map((at) => lackTo(at.runs, at.standsOn, outer));
  const slip = [face, back].map((at) => dot3(sub3(at.runs.at, at.stands.at), edges.a.edges[edges.i].along));
  const outside = worst([...runs, stands[isConvex ? 0 : 1]]);
  const gaps = isConvex ? [outside, stands[1]] : [stands[0], outside];
  return [
    { gapMm: gaps[0], slipMm: slip[0], stepMm: 0 },
    { gapMm: gaps[1], slipMm: slip[1], stepMm: 0 },
  ];
}

/** How much longer a piece would have to be, in its own surface, for a point of its edge to reach a surface of another, mm. */
function lackTo(edge: Placed, other: Placed, heightMm: number): number {
  return (heightMm - dot3(sub3(edge.at, other.at), other.normal)) / dot3(edge.outward, other.normal);
}

const worst = (lacks: readonly number[]): number =>
  lacks.reduce((most, lack) => (Math.abs(lack) > Math.abs(most) ? lack : most), 0);
