import { halvingOrder } from '../../geom/sparse-halving.ts';
import { graphOfTriangles } from '../../geom/sparse-graph.ts';
import { entryBetween, planFactor, type FactorPlan } from '../../geom/sparse-plan.ts';
import type { RestShapes } from './rest-shapes.ts';
import { findSlots, type FlatSystem } from './flat-system.ts';
import type { FlatTerm } from './flat-term.ts';

/**
 * Price of a border that leaves its straight line, in units of the energy for a distance as long as the line: the forces in a piece are
 * below 1, so it strays by about a millionth of its length.
 */
const LINE_PRICE = 1e6;

/** Borders held to straight lines: a system with one more node for each line, which says where the line lies. */
export interface StraightLines {
  readonly system: FlatSystem;
  /** The lines' cost, over that system or one of the same nodes with more entries. */
  termOver(system: FlatSystem): FlatTerm;
  /** The shape with the lines' own two numbers behind its points: each line as it fits the shape now. */
  extend(flat: Float64Array): Float64Array;
}

/**
 * Lines that runs of border vertices are to lie on. A line may move and turn as the piece wishes: with n and d the normal and the
 * direction it has in the beginning and L its length, a point x on it is off by `r = n (x - c) - shift - turn d (x - c) / L`, and costs
 * `share (r / L)²`. `shift` and `turn` are the unknowns of the line's node.
 * @param runs  local vertices, three or more each; runs of fewer are straight anyway.
 * @returns null where there is nothing to hold.
 */
export function straightLines(
  { rest }: FlatSystem,
  runs: readonly Uint32Array[],
  flat: Float64Array,
): StraightLines | null {
  const held = runs.filter((run) => run.length >= 3);
  if (held.length === 0) return null;
  const plan = planWithLines(rest, held);
  const lines = held.map((run, i) => fitLine(run, rest.vertexCount + i, flat));
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
  readonly node: number;
  /** A point on the line at the beginning, its direction, and its length. */
  readonly cx: number;
  readonly cy: number;
  readonly dx: number;
  readonly dy: number;
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

function planWithLines({ vertexCount, corners, points }: RestShapes, runs: readonly Uint32Array[]): FactorPlan {
  const fans = runs.flatMap((run, i) => Array.from(run.subarray(1)).flatMap((v, k) => [vertexCount + i, run[k], v]));
  const joined = new Uint32Array(corners.length + fans.length);
  joined.set(corners);
  joined.set(fans, corners.length);
  const graph = graphOfTriangles(vertexCount + runs.length, joined);
  return planFactor(graph, halvingOrder(graph, points));
}

/** The line of least squares through the run (its longest spread), as it lies now. */
function fitLine(run: Uint32Array, node: number, flat: Float64Array): Line {
  let cx = 0;
  let cy = 0;
  for (const v of run) {
    cx += flat[2 * v] / run.length;
    cy += flat[2 * v + 1] / run.length;
  }
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const v of run) {
    const [x, y] = [flat[2 * v] - cx, flat[2 * v + 1] - cy];
    xx += x * x;
    xy += x * y;
    yy += y * y;
  }
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
  const [first, last] = [2 * run[0], 2 * run[run.length - 1]];
  const length = Math.hypot(flat[last] - flat[first], flat[last + 1] - flat[first + 1]);
  return {
    run,
    node,
    cx,
    cy,
    dx: Math.cos(angle),
    dy: Math.sin(angle),
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

/** How far point `v` is off the line, and how far along it stands, both as shares of its length. */
function offLine({ node, cx, cy, dx, dy, length }: Line, flat: Float64Array, v: number) {
  const [x, y] = [flat[2 * v] - cx, flat[2 * v + 1] - cy];
  const along = (dx * x + dy * y) / length;
  const turn = flat[2 * node + 1];
  return { off: (dx * y - dy * x) / length - flat[2 * node] - turn * along, along, turn };
}

function costOfLine(line: Line, flat: Float64Array): number {
  const share = LINE_PRICE / line.run.length;
  let sum = 0;
  for (const v of line.run) {
    const { off } = offLine(line, flat, v);
    sum += share * off * off;
  }
  return sum;
}

/** The curvature of `off` itself (turn times place along) may be negative, and is left out where the sum must stay positive. */
function addLine(
  line: Line,
  { own, between, self, lineIsRow }: LineSlots,
  flat: Float64Array,
  gradient: Float64Array,
  values: Float64Array,
  exact: boolean,
): void {
  const { run, node, dx, dy, length } = line;
  const stiff = (2 * LINE_PRICE) / run.length;
  for (let i = 0; i < run.length; i += 1) {
    const v = run[i];
    const { off, along, turn } = offLine(line, flat, v);
    // Slopes of `off` along x and y of the point, and along the line's two numbers.
    const gx = (-dy - turn * dx) / length;
    const gy = (dx - turn * dy) / length;
    gradient[2 * v] += stiff * off * gx;
    gradient[2 * v + 1] += stiff * off * gy;
    gradient[2 * node] -= stiff * off;
    gradient[2 * node + 1] -= stiff * off * along;
    addBlock(values, 4 * own[i], stiff, gx, gy, gx, gy);
    addBlock(values, 4 * self, stiff, 1, along, 1, along);
    const at = 4 * between[i];
    const bend = exact ? (-stiff * off) / length : 0;
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
