import type { Surface } from './surface.ts';

/** What a set of cut edges leaves: pieces of faces, each with its borders. */
export interface CutPiece {
  readonly faces: readonly number[];
  /** Corners, one for each sheet of the piece that meets there, less edges plus faces; a disc has 1. */
  readonly euler: number;
  /** Corners of the file along each border. */
  readonly borders: readonly (readonly number[])[];
}

/** Cuts the surface along edges (1 in `isCut`) and at its rim. */
export function piecesOf(surface: Surface, isCut: Uint8Array): CutPiece[] {
  const { faces, edges, edgesOfFace } = surface;
  const isOpen = (e: number): boolean => isCut[e] === 1 || edges[e].faces.length !== 2;
  const starts = faces.map(() => 0);
  for (let f = 1; f < faces.length; f += 1) starts[f] = starts[f - 1] + faces[f - 1].length;
  const cornerCount = starts[faces.length - 1] + faces[faces.length - 1].length;
  const faceRoots = new Roots(faces.length);
  const cornerRoots = new Roots(cornerCount);
  for (const [e, edge] of edges.entries()) {
    if (isOpen(e)) continue;
    const [f, g] = edge.faces;
    faceRoots.join(f, g);
    for (const v of [edge.v, edge.w])
      cornerRoots.join(starts[f] + faces[f].indexOf(v), starts[g] + faces[g].indexOf(v));
  }
  const members = new Map<number, number[]>();
  faces.forEach((_, f) => {
    const root = faceRoots.rootOf(f);
    const own = members.get(root);
    if (own === undefined) members.set(root, [f]);
    else own.push(f);
  });
  return [...members.values()].map((own) => {
    const corners = new Set(own.flatMap((f) => faces[f].map((_, k) => cornerRoots.rootOf(starts[f] + k))));
    const sides = own.flatMap((f) => edgesOfFace[f]);
    const open = sides.filter(isOpen).length;
    const next = new Map<number, { to: number; corner: number }>();
    for (const f of own) {
      for (const [k, e] of edgesOfFace[f].entries()) {
        if (!isOpen(e)) continue;
        const to = cornerRoots.rootOf(starts[f] + ((k + 1) % faces[f].length));
        next.set(cornerRoots.rootOf(starts[f] + k), { to, corner: faces[f][k] });
      }
    }
    return {
      faces: own,
      euler: corners.size - ((sides.length - open) / 2 + open) + own.length,
      borders: bordersOf(next),
    };
  });
}

function bordersOf(next: Map<number, { to: number; corner: number }>): number[][] {
  const borders: number[][] = [];
  for (const first of [...next.keys()]) {
    const border: number[] = [];
    for (let at = next.get(first), from = first; at !== undefined; at = next.get(from)) {
      next.delete(from);
      border.push(at.corner);
      from = at.to;
    }
    if (border.length > 0) borders.push(border);
  }
  return borders;
}

/** Sets that join (union by the lower root, path halving). */
class Roots {
  readonly #parent: Int32Array;

  constructor(count: number) {
    this.#parent = Int32Array.from({ length: count }, (_, i) => i);
  }

  rootOf(i: number): number {
    let at = i;
    while (this.#parent[at] !== at) {
      this.#parent[at] = this.#parent[this.#parent[at]];
      at = this.#parent[at];
    }
    return at;
  }

  join(i: number, j: number): void {
    const [a, b] = [this.rootOf(i), this.rootOf(j)];
    this.#parent[Math.max(a, b)] = Math.min(a, b);
  }
}
