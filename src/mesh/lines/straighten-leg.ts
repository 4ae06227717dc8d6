import type { Surface } from '../surface.ts';
import { nextHalfedge, triangleOfHalfedge } from '../topology.ts';
import { pullTaut, type Leg, type TautLine, type Touch } from './leg.ts';
import { gatesAbout, trimmed } from './route.ts';
import { sideShapesOf } from './side-shapes.ts';

/**
 * Angle by which the way past a vertex must fall short of straight to be taken, radians. Missing one costs the square of this as a share
 * of the length, so far under rounding; taking one that is only rounding would go to and fro.
 */
const LEAST_TURN = 1e-9;

/** Rounds of turning a line over vertices, times the gates it has. They do end, as each makes it shorter; this ends them when rounding does not. */
const MOST_ROUNDS = 20;

/**
 * Makes a row of triangles into one whose taut line cannot be shortened by going round a corner on the other side: a locally shortest line,
 * exact to rounding. Where the line bends round a corner of the surface (or runs straight through it) and the angle on the other side is
 * less than a half turn, the row is led round the other side instead (Xin and Wang, "Efficiently determining a locally exact shortest path
 * on polyhedral surfaces", 2007); with Sharp and Crane (2020), who flip edges to the same end, the angle at the corner alone decides.
 */
export function straightenLeg(surface: Surface, given: Leg): { leg: Leg; line: TautLine } {
  let leg = trimmed(surface, given);
  let line = pullTaut(surface, leg);
  const rounds = MOST_ROUNDS * (leg.gates.length + 1);
  for (let round = 0; round < rounds; round += 1) {
    const next = goneRound(surface, leg, line.touches);
    if (next === null) break;
    const taut = pullTaut(surface, next);
    if (taut.length > line.length) break;
    [leg, line] = [next, taut];
  }
  return { leg, line };
}

/** The row led round the other side of every touched vertex where that is shorter; null where it is nowhere. */
function goneRound(surface: Surface, leg: Leg, touches: readonly Touch[]): Leg | null {
  let gates: readonly number[] = leg.gates;
  // From the end to the start, so that the numbers of the gates before stay what they are.
  let free = gates.length;
  let isChanged = false;
  for (let i = touches.length - 1; i >= 0; i -= 1) {
    const touch = touches[i];
    if (touch.to >= free) continue;
    const other = otherWay(surface, leg, touch);
    if (other === null) continue;
    gates = [...gates.slice(0, touch.from), ...other, ...gates.slice(touch.to + 1)];
    free = touch.from;
    isChanged = true;
  }
  return isChanged ? trimmed(surface, { ...leg, gates }) : null;
}

/** The gates past the other side of a touched vertex, where the angle there is less than a half turn; else null. */
function otherWay(surface: Surface, leg: Leg, touch: Touch): number[] | null {
  const { vertex, isLeft, from, to } = touch;
  const { angle } = sideShapesOf(surface);
  const { topology, triangles } = surface;
  const before = triangleOfHalfedge(leg.gates[from]);
  const after = triangleOfHalfedge(topology.twin[leg.gates[to]]);
  let sum = touch.restBefore + touch.restAfter;
  const gates: number[] = [];
  for (const h of gatesAbout(surface, before, vertex, !isLeft)) {
    gates.push(h);
    const across = topology.twin[h];
    if (triangleOfHalfedge(across) === after) return sum < Math.PI - LEAST_TURN ? gates : null;
    sum += angle[triangles[across] === vertex ? across : nextHalfedge(across)];
    if (sum >= Math.PI - LEAST_TURN) return null;
  }
  return null;
}
