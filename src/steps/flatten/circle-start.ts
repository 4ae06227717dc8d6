import { runWithPauses } from '../../base/stepwise.ts';
import type { Work } from '../../base/work.ts';
import { SparseFactor } from '../../geom/sparse-factor.ts';
import { graphOfTriangles } from '../../geom/sparse-graph.ts';
import { halvingSteps } from '../../geom/sparse-halving.ts';
import { planSteps, type FactorPlan } from '../../geom/sparse-plan.ts';
import type { Patch } from '../../model/patch.ts';
import { findSlots, type FlatSystem } from './flat-system.ts';
import { hasFlip } from './flips.ts';
import type { RestShapes } from './rest-shapes.ts';

/** Springs of the net stay between these, so that needles cannot spoil its arithmetic. */
const SOFTEST = 0.05;
const STIFFEST = 20;
/** A border side takes at least this share of an even one: three border points must never look like one line. */
const LEAST_SIDE_SHARE = 0.05;
/** How often the net is softened where it was crushed. */
const MOST_ROUNDS = 12;

/**
 * A first flat shape without a flip: the outer border on a circle by its lengths, the inside a net of springs at rest (Tutte, "How to
 * draw a graph", 1963; Floater 2003 for unequal springs): with positive springs no triangle can turn over. A window gets one extra
 * point joined to its rim while the net is drawn. Where a long limb is crushed below what numbers can hold, its springs are softened
 * towards its tip and the net is drawn again.
 * @returns x y per local vertex, mm, with the area of the circle equal to the patch's; null where even softened springs left a flip.
 */
export async function circleStart(patch: Patch, system: FlatSystem, work: Work): Promise<Float64Array | null> {
  const { rest } = system;
  const net = await makeNet(patch, system, work);
  const points = new Float64Array(2 * net.plan.size);
  const fixed = placeOnCircle(patch, rest, points);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    await work.pause(round / MOST_ROUNDS);
    const isSolved = await relax(net, fixed, points, work);
    if (!isSolved) return null;
    const flat = points.slice(0, 2 * rest.vertexCount);
    await work.pause(round / MOST_ROUNDS);
    if (!hasFlip(patch.triangles, flat)) return flat;
    soften(net, points);
  }
  return null;
}

/** Springs between the patch's points and one more for each window: their strength by entry of the plan. */
interface Net {
  readonly plan: FactorPlan;
  readonly strength: Float64Array;
}

async function makeNet(
  patch: Patch,
  { rest, plan: patchPlan, slots: patchSlots }: FlatSystem,
  work: Work,
): Promise<Net> {
  const windows = patch.loops.slice(1);
  let plan = patchPlan;
  let slots = patchSlots;
  if (windows.length > 0) {
    const graph = graphOfTriangles(rest.vertexCount + windows.length, withWindowFans(rest, windows));
    const pause = () => work.pause(0);
    plan = await runWithPauses(planSteps(graph, await runWithPauses(halvingSteps(graph, rest.points), pause)), pause);
    slots = findSlots(plan, rest.corners);
  }
  const strength = cotangents(rest, slots, plan.entryRows.length);
  await work.pause(0);
  const { entryStarts, entryRows, blocks } = plan;
  for (let c = 0; c < plan.size; c += 1) {
    for (let p = entryStarts[c] + 1; p < entryStarts[c + 1]; p += 1) {
      const toWindow = blocks.order[c] >= rest.vertexCount || blocks.order[entryRows[p]] >= rest.vertexCount;
      strength[p] = toWindow ? 1 : Math.min(STIFFEST, Math.max(SOFTEST, strength[p]));
    }
  }
  return { plan, strength };
}

function withWindowFans(rest: RestShapes, windows: readonly Uint32Array[]): Uint32Array {
  const sides = windows.reduce((sum, loop) => sum + loop.length, 0);
  const triangles = new Uint32Array(rest.corners.length + 3 * sides);
  triangles.set(rest.corners);
  let at = rest.corners.length;
  for (const [w, loop] of windows.entries()) {
    for (let i = 0; i < loop.length; i += 1, at += 3) {
      triangles[at] = rest.vertexCount + w;
      triangles[at + 1] = loop[(i + 1) % loop.length];
      triangles[at + 2] = loop[i];
    }
  }
  return triangles;
}

/** The springs of the least stretched net (Pinkall and Polthier 1993): half the cotangents of the two angles that look at a side. */
function cotangents({ count, base, foot, height }: RestShapes, slots: Int32Array, entries: number): Float64Array {
  const strength = new Float64Array(entries);
  for (let t = 0; t < count; t += 1) {
    const h = height[t];
    strength[slots[6 * t + 3] >> 1] += (h * h - foot[t] * (base[t] - foot[t])) / (h * base[t]) / 2;
    strength[slots[6 * t + 4] >> 1] += (base[t] - foot[t]) / h / 2;
    strength[slots[6 * t + 5] >> 1] += foot[t] / h / 2;
  }
  return strength;
}

/** Puts the outer loop on the circle, counter-clockwise; 1 for every point that may not move. */
function placeOnCircle(patch: Patch, rest: RestShapes, points: Float64Array): Uint8Array {
  const loop = patch.loops[0];
  const fixed = new Uint8Array(points.length / 2);
  const sides = sideLengths(loop, rest);
  const even = sides.reduce((sum, side) => sum + side, 0) / loop.length;
  const shares = sides.map((side) => Math.max(side, LEAST_SIDE_SHARE * even));
  const round = shares.reduce((sum, side) => sum + side, 0);
  const radius = Math.sqrt(rest.totalArea / Math.PI);
  let along = 0;
  for (let i = 0; i < loop.length; i += 1) {
    const angle = (2 * Math.PI * along) / round;
    points[2 * loop[i]] = radius * Math.cos(angle);
    points[2 * loop[i] + 1] = radius * Math.sin(angle);
    fixed[loop[i]] = 1;
    along += shares[i];
  }
  return fixed;
}

/** Length of the side from each point of the loop to the next, mm. */
function sideLengths(loop: Uint32Array, rest: RestShapes): Float64Array {
  const { corners, base, foot, height } = rest;
  const place = new Map<number, number>();
  for (let i = 0; i < loop.length; i += 1) place.set(loop[i], i);
  const lengths = new Float64Array(loop.length);
  for (let t = 0; t < rest.count; t += 1) {
    const sides = [base[t], Math.hypot(base[t] - foot[t], height[t]), Math.hypot(foot[t], height[t])];
    for (let k = 0; k < 3; k += 1) {
      const i = place.get(corners[3 * t + k]);
      if (i !== undefined && loop[(i + 1) % loop.length] === corners[3 * t + ((k + 1) % 3)]) lengths[i] = sides[k];
    }
  }
  return lengths;
}

/** Solves for the points that may move. Fixed points keep a row of their own, so that one plan serves patch and net. */
async function relax({ plan, strength }: Net, fixed: Uint8Array, points: Float64Array, work: Work): Promise<boolean> {
  const factor = new SparseFactor(plan, 1);
  const { values } = factor;
  const { entryStarts, entryRows, blocks } = plan;
  const right = new Float64Array(2 * plan.size);
  await work.pause(0);
  for (let c = 0; c < plan.size; c += 1) {
    const a = blocks.order[c];
    for (let p = entryStarts[c] + 1; p < entryStarts[c + 1]; p += 1) {
      const b = blocks.order[entryRows[p]];
      const k = strength[p];
      values[entryStarts[c]] += k;
      values[entryStarts[entryRows[p]]] += k;
      if (fixed[a] === 0 && fixed[b] === 0) values[p] = -k;
      if (fixed[a] === 1 && fixed[b] === 0) pull(right, b, k, points, a);
      if (fixed[b] === 1 && fixed[a] === 0) pull(right, a, k, points, b);
    }
  }
  const isDefinite = await factor.factorWithPauses(() => work.pause(0));
  if (!isDefinite) return false;
  await runWithPauses(factor.solveSteps(right), () => work.pause(0));
  for (let v = 0; v < plan.size; v += 1) {
    if (fixed[v] === 1) continue;
    points[2 * v] = right[2 * v];
    points[2 * v + 1] = right[2 * v + 1];
  }
  return true;
}

function pull(right: Float64Array, v: number, strength: number, points: Float64Array, towards: number): void {
  right[2 * v] += strength * points[2 * towards];
  right[2 * v + 1] += strength * points[2 * towards + 1];
}

/** A spring that came out short is made weaker: what was crushed pulls itself together less, and the next net gives it room. */
function soften({ plan, strength }: Net, points: Float64Array): void {
  const { entryStarts, entryRows, blocks } = plan;
  const lengths = new Float64Array(strength.length);
  let sum = 0;
  for (let c = 0; c < plan.size; c += 1) {
    const a = 2 * blocks.order[c];
    for (let p = entryStarts[c] + 1; p < entryStarts[c + 1]; p += 1) {
      const b = 2 * blocks.order[entryRows[p]];
      lengths[p] = Math.hypot(points[b] - points[a], points[b + 1] - points[a + 1]);
      sum += lengths[p];
    }
  }
  const mean = sum / (strength.length - plan.size);
  for (let p = 0; p < strength.length; p += 1) {
    strength[p] *= Math.min(1, Math.max(1e-14, lengths[p] / mean));
  }
}
