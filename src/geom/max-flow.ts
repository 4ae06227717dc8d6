/** Pipes between numbered places; water runs either way through each, up to its capacity. */
export interface FlowNet {
  /** Number of places. */
  readonly size: number;
  /** Two places per pipe, packed. */
  readonly ends: ArrayLike<number>;
  /** One per pipe, >= 0. */
  readonly capacities: ArrayLike<number>;
}

/** The most that can flow, and where it is held up. */
export interface LeastCut {
  /** What flows at most, and equally the sum of the capacities cut through (Ford and Fulkerson 1956). */
  readonly value: number;
  /** 1 for each place on the side of the sources. */
  readonly isSourceSide: Uint8Array;
  /** Pipes that lead from one side to the other, ascending. */
  readonly pipes: readonly number[];
}

/** What is left in a pipe below this share of the widest one is rounding. */
const EMPTY_SHARE = 1e-13;

/**
 * The cheapest set of pipes that parts the sources from the sinks: maximum flow by shortest augmenting paths in layers (Dinic,
 * "Algorithm for solution of a problem of maximum flow in networks with power estimation", 1970). Of several cuts of the same value the
 * one nearest to the sources.
 * @throws RangeError where a place is source and sink at once: nothing parts it from itself.
 */
export function leastCut(net: FlowNet, sources: ArrayLike<number>, sinks: ArrayLike<number>): LeastCut {
  const flow = new LayeredFlow(net, sources, sinks);
  while (flow.layOut()) flow.fill();
  const isSourceSide = Uint8Array.from(flow.layer, (layer) => (layer >= 0 ? 1 : 0));
  const pipes: number[] = [];
  let value = 0;
  for (let pipe = 0; pipe < net.capacities.length; pipe += 1) {
    if (isSourceSide[net.ends[2 * pipe]] === isSourceSide[net.ends[2 * pipe + 1]]) continue;
    pipes.push(pipe);
    value += net.capacities[pipe];
  }
  return { value, isSourceSide, pipes };
}

/** Pipe `p` is the pair of arcs `2 p` (first end to second) and `2 p + 1` (back); what one carries the other can give back. */
class LayeredFlow {
  /** Steps from the sources through arcs with room, per place; -1 where none leads. */
  readonly layer: Int32Array;
  readonly #room: Float64Array;
  readonly #target: Int32Array;
  /** Arcs that leave place `v`: `#arcs[#starts[v] .. #starts[v + 1])`. */
  readonly #starts: Int32Array;
  readonly #arcs: Int32Array;
  readonly #sources: ArrayLike<number>;
  readonly #isSink: Uint8Array;
  readonly #empty: number;

  constructor({ size, ends, capacities }: FlowNet, sources: ArrayLike<number>, sinks: ArrayLike<number>) {
    const arcCount = 2 * capacities.length;
    this.layer = new Int32Array(size);
    this.#room = new Float64Array(arcCount);
    this.#target = new Int32Array(arcCount);
    this.#starts = new Int32Array(size + 1);
    this.#arcs = new Int32Array(arcCount);
    this.#sources = sources;
    this.#isSink = new Uint8Array(size);
    let widest = 0;
    for (let arc = 0; arc < arcCount; arc += 1) {
      this.#room[arc] = capacities[arc >> 1];
      this.#target[arc] = ends[arc ^ 1];
      this.#starts[ends[arc] + 1] += 1;
      widest = Math.max(widest, capacities[arc >> 1]);
    }
    this.#empty = EMPTY_SHARE * widest;
    for (let v = 0; v < size; v += 1) this.#starts[v + 1] += this.#starts[v];
    const put = this.#starts.slice();
    for (let arc = 0; arc < arcCount; arc += 1) this.#arcs[put[ends[arc]]++] = arc;
    for (let i = 0; i < sinks.length; i += 1) this.#isSink[sinks[i]] = 1;
    for (let i = 0; i < sources.length; i += 1) {
      if (this.#isSink[sources[i]] === 1) throw new RangeError(`place ${sources[i]} is source and sink`);
    }
  }

  /** Finds the layers anew; true while a sink can be reached. */
  layOut(): boolean {
    this.layer.fill(-1);
    const queue: number[] = [];
    for (let i = 0; i < this.#sources.length; i += 1) {
      if (this.layer[this.#sources[i]] === 0) continue;
      this.layer[this.#sources[i]] = 0;
      queue.push(this.#sources[i]);
    }
    let reached = false;
    for (const v of queue) {
      for (let i = this.#starts[v]; i < this.#starts[v + 1]; i += 1) {
        const w = this.#target[this.#arcs[i]];
        if (this.layer[w] >= 0 || this.#room[this.#arcs[i]] <= this.#empty) continue;
        this.layer[w] = this.layer[v] + 1;
        reached ||= this.#isSink[w] === 1;
        queue.push(w);
      }
    }
    return reached;
  }

  /** Sends all that goes through the layers: paths from layer to layer, each arc tried until it is of no more use. */
  fill(): void {
    const tried = this.#starts.slice(0, this.layer.length);
    const path: number[] = [];
    for (let i = 0; i < this.#sources.length; i += 1) {
      const source = this.#sources[i];
      for (let v = source; ;) {
        if (this.#isSink[v] === 1) {
          v = this.#send(path);
          continue;
        }
        if (tried[v] < this.#starts[v + 1]) {
          const arc = this.#arcs[tried[v]];
          const w = this.#target[arc];
          if (this.#room[arc] > this.#empty && this.layer[w] === this.layer[v] + 1) {
            path.push(arc);
            v = w;
          } else {
            tried[v] += 1;
          }
          continue;
        }
        const back = path.pop();
        if (back === undefined) break;
        v = this.#target[back ^ 1];
        tried[v] += 1;
      }
    }
  }

  /** Fills the narrowest arc of a path to a sink and goes back to where it begins, which is returned. */
  #send(path: number[]): number {
    let narrowest = 0;
    for (let i = 1; i < path.length; i += 1) {
      if (this.#room[path[i]] < this.#room[path[narrowest]]) narrowest = i;
    }
    const amount = this.#room[path[narrowest]];
    for (const arc of path) {
      this.#room[arc] -= amount;
      this.#room[arc ^ 1] += amount;
    }
    const from = this.#target[path[narrowest] ^ 1];
    path.length = narrowest;
    return from;
  }
}
