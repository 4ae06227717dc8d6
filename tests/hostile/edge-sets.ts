import type { Mesh } from '../../src/mesh/mesh.ts';
import { topologyOf } from '../../src/mesh/topology.ts';

/** Pairs of corners, file numbers. */
export type EdgeList = readonly (readonly [number, number])[];

/** Makes one set of seams along edges. */
type Way = (net: EdgeNet, rand: () => number) => readonly number[];

/** Edges and who meets whom. */
interface EdgeNet {
  readonly mesh: Mesh;
  /** Edge and the corner at its other end, by corner. */
  readonly at: readonly (readonly (readonly [edge: number, other: number])[])[];
  /** Both triangles of each edge; -1 where there is none. */
  readonly sides: readonly (readonly [number, number])[];
  readonly edgeCount: number;
  readonly triangleCount: number;
}

const NETS = new WeakMap<Mesh, EdgeNet>();

function netOf(mesh: Mesh): EdgeNet {
  let net = NETS.get(mesh);
  if (net === undefined) NETS.set(mesh, (net = findNet(mesh)));
  return net;
}

function findNet(mesh: Mesh): EdgeNet {
  const { edgeCount, edgeVertices, halfedgeOfEdge, twin } = topologyOf(mesh);
  const at: [number, number][][] = Array.from({ length: mesh.positions.length / 3 }, () => []);
  const sides: [number, number][] = [];
  for (let e = 0; e < edgeCount; e += 1) {
    const [v, w] = edgeVertices.subarray(2 * e, 2 * e + 2);
    at[v].push([e, w]);
    at[w].push([e, v]);
    const h = halfedgeOfEdge[e];
    sides.push([Math.floor(h / 3), twin[h] < 0 ? -1 : Math.floor(twin[h] / 3)]);
  }
  return { mesh, at, sides, edgeCount, triangleCount: mesh.triangles.length / 3 };
}

const pick = (count: number, rand: () => number): number => Math.floor(rand() * count);
const range = (count: number): number[] => [...Array(count).keys()];

const some =
  (share: number): Way =>
  ({ edgeCount }, rand) =>
    range(edgeCount).filter(() => rand() < share);

/** A walk that seldom turns back; it may cross itself. */
function walk({ at }: EdgeNet, rand: () => number, from: number, steps: number): number[] {
  const edges: number[] = [];
  let [here, last] = [from, -1];
  for (let i = 0; i < steps; i += 1) {
    const ways = at[here].filter(([edge]) => edge !== last || rand() < 0.1);
    if (ways.length === 0) break;
    const [edge, next] = ways[pick(ways.length, rand)];
    edges.push(edge);
    [here, last] = [next, edge];
  }
  return edges;
}

/** The way of fewest edges; nothing where there is none. */
function shortest({ at }: EdgeNet, from: number, to: number): number[] {
  const came = new Map<number, readonly [edge: number, before: number]>([[from, [-1, -1]]]);
  const queue = [from];
  for (let i = 0; i < queue.length && !came.has(to); i += 1)
    for (const [edge, other] of at[queue[i]])
      if (!came.has(other)) {
        came.set(other, [edge, queue[i]]);
        queue.push(other);
      }
  const edges: number[] = [];
  for (let step = came.get(to); step !== undefined && step[0] >= 0; step = came.get(step[1])) edges.push(step[0]);
  return edges;
}

const corner = ({ at }: EdgeNet, rand: () => number): number => pick(at.length, rand);

/** Areas that grow from a few triangles until all is theirs; edges between them. */
function areas(net: EdgeNet, rand: () => number, count: number): number[] {
  const { sides, triangleCount } = net;
  const beside: number[][] = Array.from({ length: triangleCount }, () => []);
  for (const [s, t] of sides)
    if (t >= 0) {
      beside[s].push(t);
      beside[t].push(s);
    }
  const own = new Int32Array(triangleCount).fill(-1);
  const front: number[] = [];
  for (let i = 0; i < count; i += 1) {
    const t = pick(triangleCount, rand);
    if (own[t] < 0) front.push(t);
    own[t] = i;
  }
  while (front.length > 0) {
    const [t] = front.splice(pick(front.length, rand), 1);
    for (const next of beside[t])
      if (own[next] < 0) {
        own[next] = own[t];
        front.push(next);
      }
  }
  return range(sides.length).filter((e) => sides[e][1] >= 0 && own[sides[e][0]] !== own[sides[e][1]]);
}

/** All edges but those over which a tree reaches every triangle: one piece, as narrow as the tree. */
function net(own: EdgeNet, rand: () => number): number[] {
  const { sides, triangleCount, edgeCount } = own;
  const group = Int32Array.from(range(triangleCount));
  const find = (t: number): number => {
    let root = t;
    while (group[root] !== root) root = group[root];
    return root;
  };
  const order = range(edgeCount).map((e) => [rand(), e] as const);
  const joined = new Set<number>();
  for (const [, e] of order.sort(([a], [b]) => a - b)) {
    const [s, t] = sides[e];
    if (t < 0 || find(s) === find(t)) continue;
    group[find(s)] = find(t);
    joined.add(e);
  }
  return range(edgeCount).filter((e) => !joined.has(e));
}

/** Edges over which a tree reaches every corner. */
function tree({ at }: EdgeNet, rand: () => number): number[] {
  const seen = new Uint8Array(at.length);
  const edges: number[] = [];
  const stack = [pick(at.length, rand)];
  seen[stack[0]] = 1;
  while (stack.length > 0) {
    const here = rand() < 0.7 ? stack.length - 1 : pick(stack.length, rand);
    const ways = at[stack[here]].filter(([, other]) => seen[other] === 0);
    if (ways.length === 0) {
      stack.splice(here, 1);
      continue;
    }
    const [edge, other] = ways[pick(ways.length, rand)];
    seen[other] = 1;
    edges.push(edge);
    stack.push(other);
  }
  return edges;
}

function darts(own: EdgeNet, rand: () => number): number[] {
  const rim = own.sides.flatMap(([, t], e) => (t < 0 ? [e] : []));
  const { edgeVertices } = topologyOf(own.mesh);
  return range(1 + pick(4, rand)).flatMap(() => {
    const from = rim.length === 0 ? corner(own, rand) : edgeVertices[2 * rim[pick(rim.length, rand)]];
    return walk(own, rand, from, 1 + pick(5, rand));
  });
}

function loop(own: EdgeNet, rand: () => number): number[] {
  const stops = Array.from({ length: 3 }, () => corner(own, rand));
  return stops.flatMap((stop, i) => shortest(own, stop, stops[(i + 1) % 3]));
}

/** Ways that make many pieces: laying those takes long, so they are seldom taken, and never of more than 60 triangles. */
const MANY: Readonly<Record<string, Way>> = {
  'every edge': ({ edgeCount }) => range(edgeCount),
  'some edges': some(0.3),
  'most edges': some(0.8),
  'many areas': (own, rand) => areas(own, rand, 8 + pick(20, rand)),
};

const WAYS: Readonly<Record<string, Way>> = {
  none: () => [],
  'a few edges': some(0.04),
  walk: (own, rand) => walk(own, rand, corner(own, rand), 2 + pick(30, rand)),
  'shortest way': (own, rand) => shortest(own, corner(own, rand), corner(own, rand)),
  loop,
  'two loops': (own, rand) => [...loop(own, rand), ...loop(own, rand)],
  darts,
  net,
  tree,
  'two areas': (own, rand) => areas(own, rand, 2),
  areas: (own, rand) => areas(own, rand, 3 + pick(4, rand)),
  'areas with darts': (own, rand) => [...areas(own, rand, 2 + pick(4, rand)), ...darts(own, rand)],
  'areas with loose ends': (own, rand) => [
    ...areas(own, rand, 2 + pick(4, rand)),
    ...walk(own, rand, corner(own, rand), 1 + pick(6, rand)),
    ...some(0.01)(own, rand),
  ],
  'areas that lost a few edges': (own, rand) => areas(own, rand, 3 + pick(4, rand)).filter(() => rand() < 0.95),
};

/** One set of seams along edges, by chance; some name an edge twice, either way round. */
export function edgeSet(mesh: Mesh, rand: () => number): { readonly name: string; readonly edges: EdgeList } {
  const { edgeVertices } = topologyOf(mesh);
  const all = Object.entries(rand() < (mesh.triangles.length > 180 ? 0 : 0.02) ? MANY : WAYS);
  const [name, way] = all[pick(all.length, rand)];
  const chosen = way(netOf(mesh), rand);
  const doubled = rand() < 0.1 ? chosen.filter(() => rand() < 0.3) : [];
  const named = [...new Set(chosen), ...doubled].map((e): readonly [number, number] => {
    const [v, w] = [mesh.fileVertex[edgeVertices[2 * e]], mesh.fileVertex[edgeVertices[2 * e + 1]]];
    return rand() < 0.5 ? [v, w] : [w, v];
  });
  return { name, edges: named };
}
