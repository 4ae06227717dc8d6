/** Cheapest ways from a set of starts through a graph (Dijkstra 1959); equal costs are settled by the lower number. */
export interface Ways {
  readonly cost: Float64Array;
  /** The start each node is reached from, -1 where it is not reached. */
  readonly start: Int32Array;
  /** The step that arrives at each node, as the graph named it; -1 at starts. */
  readonly step: Int32Array;
  /** The node before, -1 at starts. */
  readonly before: Int32Array;
}

export interface Step {
  readonly to: number;
  readonly cost: number;
  /** A name for the step, e.g. the edge's number. */
  readonly by: number;
}

export function shortestWays(
  count: number,
  starts: readonly number[],
  stepsFrom: (node: number) => readonly Step[],
): Ways {
  const cost = new Float64Array(count).fill(Infinity);
  const start = new Int32Array(count).fill(-1);
  const step = new Int32Array(count).fill(-1);
  const before = new Int32Array(count).fill(-1);
  const heap: { cost: number; node: number }[] = [];
  for (const node of starts) {
    cost[node] = 0;
    start[node] = node;
    push(heap, { cost: 0, node });
  }
  for (let top = pop(heap); top !== undefined; top = pop(heap)) {
    if (top.cost > cost[top.node]) continue;
    for (const { to, cost: extra, by } of stepsFrom(top.node)) {
      const total = top.cost + extra;
      if (!(total < cost[to])) continue;
      cost[to] = total;
      start[to] = start[top.node];
      step[to] = by;
      before[to] = top.node;
      push(heap, { cost: total, node: to });
    }
  }
  return { cost, start, step, before };
}

/** Names of the steps from the start to a node. */
export function stepsTo(ways: Ways, node: number): number[] {
  const steps: number[] = [];
  for (let at = node; ways.before[at] >= 0; at = ways.before[at]) steps.unshift(ways.step[at]);
  return steps;
}

interface Entry {
  readonly cost: number;
  readonly node: number;
}

const isBefore = (a: Entry, b: Entry): boolean => a.cost < b.cost || (a.cost === b.cost && a.node < b.node);

function push(heap: Entry[], entry: Entry): void {
  let at = heap.length;
  heap.push(entry);
  while (at > 0) {
    const parent = (at - 1) >> 1;
    if (!isBefore(entry, heap[parent])) break;
    heap[at] = heap[parent];
    at = parent;
  }
  heap[at] = entry;
}

function pop(heap: Entry[]): Entry | undefined {
  const top = heap[0];
  const last = heap.pop();
  if (last === undefined || heap.length === 0) return top;
  let at = 0;
  for (;;) {
    let child = 2 * at + 1;
    if (child >= heap.length) break;
    if (child + 1 < heap.length && isBefore(heap[child + 1], heap[child])) child += 1;
    if (!isBefore(heap[child], last)) break;
    heap[at] = heap[child];
    at = child;
  }
  heap[at] = last;
  return top;
}
