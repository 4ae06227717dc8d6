import { halvingOrder } from '../../geom/sparse-halving.ts';
import { graphOfTriangles } from '../../geom/sparse-graph.ts';
import { entryBetween, planFactor, type FactorPlan } from '../../geom/sparse-plan.ts';
import type { StraightRun } from './flatten-options.ts';
import type { RestShapes } from './rest-shapes.ts';
import { findSlots, type FlatSystem } from './flat-system.ts';
import type { FlatTerm } from './flat-term.ts';

/**
 * Price of an edge that leaves its straight line, in units of the energy for a distance as long as the line: the forces in a piece are
 * below 1, so it strays by about a millionth of its length.
 */
const LINE_PRICE = 1e6;

/** Cut edges held to straight lines: a system with one more node for each line, which says where the line lies. */
export interface StraightLines {
  readonly system: FlatSystem;
  /** The lines' cost, over that system or one of the same nodes with more entries. */
  termOver(system: FlatSystem): FlatTerm;
  /** The shape with the lines' own two numbers behind its points: each line as it fits the shape now. */
  extend(flat: Float64Array): Float64Array;
}

/**
 * Lines that the cut edges along runs of border vertices are to lie on. A line may move and turn as the piece wishes: with `n` its normal
 * to the left, turned by `turn` from how it lay in the beginning, L the run's true length and `o` how far the cut edge stands outside
 * the border at a point x, that point is off by `r = n(turn) (x - c) - o - shift L`, and costs `share (r / L)²`. `shift` and `turn` are the
 * unknowns of the line's node. All lines can be reached from any start, so the cost does not depend on it.
 * @param runs  of three or more vertices each; runs of fewer are straight anyway.
 * @returns null where there is nothing to hold.
 */
export function straightLines(
  { rest }: FlatSystem,
  runs: readonly StraightRun[],
  flat: Float64Array,
): StraightLines | null {
  const held = runs.filter(({ vertices }) => vertices.length >= 3);
  if (held.length === 0) return null;
  const plan = planWithLines(rest, held);
  const lines = held.map((run, i) => fitLine(run, rest.vertexCount + i, flat, trueLength(rest, run)));
  return {
    system: { rest, plan, slots: findSlots(plan, rest.corners) },
    termOver(system) {
      const slots = lines.map((line) => slotsOf(line, system.plan));
      return {
        costOf: (shape) => lines.reduce((sum, line) => sum + costOfLine(line, shape), 0),
        addDerivatives: (shape, gradient, values, exact) => {
          for (const [i, line] of lines.entries()) addLine(line, slots[i], shape, gradient, values, exact);
        },
      };
    },
    extend(shape) {
      const longer = new Float64Array(2 * plan.size);
      longer.set(shape.subarray(0, 2 * rest.vertexCount));
      return longer;
    },
  };
}

interface Line {
  readonly run: Uint32Array;
  readonly outward: Float64Array;
  readonly node: number;
  /** A point on the line at the beginning, and the direction it has there, radians. */
  readonly cx: number;
  readonly cy: number;
  readonly angle: number;
  /** True length of the run. */
  readonly length: number;
}

interface LineSlots {
  /** Entries of the plan: of each vertex with itself, of each with the line, of the line with itself. */
  readonly own: Int32Array;
  readonly between: Int32Array;
  readonly self: number;
  /** For each vertex: true where the line's node is the row of the entry between them. */
  readonly lineIsRow: Uint8Array;
}

function planWithLines({ vertexCount, corners, points }: RestShapes, runs: readonly StraightRun[]): FactorPlan {
  const fans = runs.flatMap(({ vertices }, i) =>
    Array.from(vertices.subarray(1)).flatMap((v, k) => [vertexCount + i, vertices[k], v]),
  );
  const joined = new Uint32Array(corners.length + fans.length);
  joined.set(corners);
  joined.set(fans, corners.length);
  const graph = graphOfTriangles(vertexCount + runs.length, joined);
  return planFactor(graph, halvingOrder(graph, points));
}

function trueLength({ points }: RestShapes, { vertices }: StraightRun): number {
  let length = 0;
  for (let i = 1; i < vertices.length; i += 1) {
    const [a, b] = [3 * vertices[i - 1], 3 * vertices[i]];
    length += Math.hypot(points[b] - points[a], points[b + 1] - points[a + 1], points[b + 2] - points[a + 2]);
  }
  return length;
}

/** The line of least squares through the run's cut edge (its longest spread), as it lies now, from the run's first point to its last. */
function fitLine({ vertices, outwardMm }: StraightRun, node: number, flat: Float64Array, length: number): Line {
  const count = vertices.length;
  const [first, last] = [2 * vertices[0], 2 * vertices[count - 1]];
  const [wayX, wayY] = [flat[last] - flat[first], flat[last + 1] - flat[first + 1]];
  const chord = Math.hypot(wayX, wayY) || 1;
  const cut = (i: number) => [
    flat[2 * vertices[i]] + (outwardMm[i] * wayY) / chord,
    flat[2 * vertices[i] + 1] - (outwardMm[i] * wayX) / chord,
  ];
  let cx = 0;
  let cy = 0;
  for (let i = 0; i < count; i += 1) {
    const [x, y] = cut(i);
    cx += x / count;
    cy += y / count;
  }
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let i = 0; i < count; i += 1) {
    const [x, y] = cut(i);
    xx += (x - cx) * (x - cx);
    xy += (x - cx) * (y - cy);
    yy += (y - cy) * (y - cy);
  }
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
  const isAgainst = Math.cos(angle) * wayX + Math.sin(angle) * wayY < 0;
  return {
    run: vertices,
    outward: outwardMm,
    node,
    cx,
    cy,
    angle: isAgainst ? angle + Math.PI : angle,
    length: length > 0 ? length : 1,
  };
}

function slotsOf({ run, node }: Line, plan: FactorPlan): LineSlots {
  return {
    own: Int32Array.from(run, (v) => entryBetween(plan, v, v)),
    between: Int32Array.from(run, (v) => entryBetween(plan, v, node)),
    self: entryBetween(plan, node, node),
    lineIsRow: Uint8Array.from(run, (v) => (plan.blocks.place[node] > plan.blocks.place[v] ? 1 : 0)),
  };
}

/** Direction of a line as it is turned now: a unit vector. */
function directionOf({ node, angle }: Line, flat: Float64Array): readonly [number, number] {
  const now = angle + flat[2 * node + 1];
  return [Math.cos(now), Math.sin(now)];
}

/** How far the cut edge at the `i`-th point is to the left of the line, and how far along it the point stands, both as shares of the length. */
function offLine(line: Line, dx: number, dy: number, flat: Float64Array, i: number) {
  const { run, outward, node, cx, cy, length } = line;
  const [x, y] = [flat[2 * run[i]] - cx, flat[2 * run[i] + 1] - cy];
  const left = (dx * y - dy * x) / length;
  return { off: left - outward[i] / length - flat[2 * node], left, along: (dx * x + dy * y) / length };
}

function costOfLine(line: Line, flat: Float64Array): number {
  const share = LINE_PRICE / line.run.length;
  const [dx, dy] = directionOf(line, flat);
  let sum = 0;
  for (let i = 0; i < line.run.length; i += 1) {
    const { off } = offLine(line, dx, dy, flat, i);
    sum += share * off * off;
  }
  return sum;
}

/** The curvature of `off` itself (turn with place) may be negative, and is left out where the sum must stay positive. */
function addLine(
  line: Line,
  { own, between, self, lineIsRow }: LineSlots,
  flat: Float64Array,
  gradient: Float64Array,
  values: Float64Array,
  exact: boolean,
): void {
  const { run, node, length } = line;
  const stiff = (2 * LINE_PRICE) / run.length;
  const [dx, dy] = directionOf(line, flat);
  // Slopes of `off` along x and y of a point; along the line's two numbers they are -1 and -along.
  const [gx, gy] = [-dy / length, dx / length];
  for (let i = 0; i < run.length; i += 1) {
    const v = run[i];
    const { off, left, along } = offLine(line, dx, dy, flat, i);
    gradient[2 * v] += stiff * off * gx;
    gradient[2 * v + 1] += stiff * off * gy;
    gradient[2 * node] -= stiff * off;
    gradient[2 * node + 1] -= stiff * off * along;
    addBlock(values, 4 * own[i], stiff, gx, gy, gx, gy);
    addBlock(values, 4 * self, stiff, 1, along, 1, along);
    const at = 4 * between[i];
    const bend = exact ? (-stiff * off) / length : 0;
    if (exact) values[4 * self + 3] -= stiff * off * left;
    if (lineIsRow[i] === 1) {
      addBlock(values, at, stiff, -1, -along, gx, gy);
      values[at + 2] += bend * dx;
      values[at + 3] += bend * dy;
    } else {
      addBlock(values, at, stiff, gx, gy, -1, -along);
      values[at + 1] += bend * dx;
      values[at + 3] += bend * dy;
    }
  }
}

/** Adds `stiff` times the product of a column (row's two numbers) and a row (column's two numbers). */
function addBlock(
  values: Float64Array,
  at: number,
  stiff: number,
  rowX: number,
  rowY: number,
  columnX: number,
  columnY: number,
): void {
  values[at] += stiff * rowX * columnX;
  values[at + 1] += stiff * rowX * columnY;
  values[at + 2] += stiff * rowY * columnX;
  values[at + 3] += stiff * rowY * columnY;
}
