import { DisjointSets } from '../base/disjoint-sets.ts';
import { Memo } from '../base/memo.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { nextHalfedge } from '../mesh/topology.ts';
import type { Region } from '../model/flatten-settings.ts';
import { NO_SEAMS, type SeamMarks } from '../model/seams.ts';
import type { SculptPart } from '../project/project.ts';
import type { OwnSurface } from './run.ts';

/** Results kept: a maker goes a few steps back and forth over a few areas. */
const KEPT = 16;

type Own = Omit<OwnSurface, 'part'> & { readonly wishes: Pick<SculptPart, 'name' | 'seams' | 'pieceSettings'> };

const NONE: readonly never[] = [];

/** The surfaces of raised sheets, and what is remembered of them. */
export class RaisedAreas {
  readonly #known = new Memo<unknown[], Own>(KEPT);

  /** The sculpt inside an area, for a sheet that ends at its border; wishes for the pieces of the wall are not the sheet's. */
  of(mesh: Mesh, part: SculptPart, area: Region): OwnSurface {
    const key = [mesh, area.faces, area.name, part.seams];
    const own = this.#known.get(key) ?? this.#known.set(key, inside(mesh, part, area));
    return { ...own, part: { ...part, ...own.wishes, seamSettings: NONE, edgeWishes: NONE } };
  }
}

function inside(mesh: Mesh, { seams }: SculptPart, { faces, name }: Region): Own {
  const wanted = new Set(faces);
  const sourceOfTriangle = Int32Array.from(mesh.faceOfTriangle.keys()).filter((t) =>
    wanted.has(mesh.faceOfTriangle[t]),
  );
  const triangles = new Uint32Array(3 * sourceOfTriangle.length);
  sourceOfTriangle.forEach((t, i) => triangles.set(mesh.triangles.subarray(3 * t, 3 * t + 3), 3 * i));
  const own: Mesh = {
    ...mesh,
    triangles,
    faceOfTriangle: Uint32Array.from(sourceOfTriangle, (t) => mesh.faceOfTriangle[t]),
  };
  const { sheets, areDiscs } = sheetsOf(own);
  const settings = sheets.map((face, i) => ({ face, name: sheets.length === 1 ? name : `${name} ${i + 1}` }));
  // One that does not lie flat as it is, is parted where the wall under it is.
  const marks = areDiscs ? NO_SEAMS : seamsInside(own, seams);
  return { mesh: own, sourceOfTriangle, wishes: { name, seams: marks, pieceSettings: settings } };
}

/** The lowest face of each sheet that hangs together, and whether each has one border and no hole: Euler's formula. */
function sheetsOf({ triangles, faceOfTriangle, positions }: Mesh): { sheets: readonly number[]; areDiscs: boolean } {
  const sets = new DisjointSets(positions.length / 3);
  const edges = new Set<string>();
  const used = new Set<number>(triangles);
  for (let h = 0; h < triangles.length; h += 1) {
    const [v, w] = [triangles[h], triangles[nextHalfedge(h)]];
    sets.join(v, w);
    edges.add(v < w ? `${v} ${w}` : `${w} ${v}`);
  }
  const lowest = new Map<number, number>();
  faceOfTriangle.forEach((face, t) => {
    const root = sets.find(triangles[3 * t]);
    lowest.set(root, Math.min(lowest.get(root) ?? Infinity, face));
  });
  const characteristic = used.size - edges.size + triangles.length / 3;
  return { sheets: [...lowest.values()].sort((a, b) => a - b), areDiscs: characteristic === lowest.size };
}

/** Marks between two faces of the surface. */
function seamsInside({ triangles, vertexOfFile }: Mesh, { edges }: SeamMarks): SeamMarks {
  const uses = new Map<string, number>();
  for (let h = 0; h < triangles.length; h += 1) {
    const key = keyOf(triangles[h], triangles[nextHalfedge(h)]);
    uses.set(key, (uses.get(key) ?? 0) + 1);
  }
  return { edges: edges.filter(([a, b]) => uses.get(keyOf(vertexOfFile[a], vertexOfFile[b])) === 2), paths: [] };
}

const keyOf = (v: number, w: number): string => (v < w ? `${v} ${w}` : `${w} ${v}`);

/** The lines round an area that runs through the sculpt, in file numbers: runs of edges, each from the end of the last. */
export function outlineOf(mesh: Mesh, { faces }: Region): readonly (readonly (readonly [number, number])[])[] {
  const wanted = new Set(faces);
  const isIn = (t: number): boolean => wanted.has(mesh.faceOfTriangle[t]);
  const outside = new Set<string>();
  for (let h = 0; h < mesh.triangles.length; h += 1) {
    if (!isIn(Math.floor(h / 3))) outside.add(`${mesh.triangles[nextHalfedge(h)]} ${mesh.triangles[h]}`);
  }
  // Along the border each corner has one edge that leaves it, but where two parts of the area touch.
  const leaving = new Map<number, number[]>();
  for (let h = 0; h < mesh.triangles.length; h += 1) {
    const [v, w] = [mesh.triangles[h], mesh.triangles[nextHalfedge(h)]];
    if (isIn(Math.floor(h / 3)) && outside.has(`${v} ${w}`)) leaving.set(v, [...(leaving.get(v) ?? []), w]);
  }
  const loops: [number, number][][] = [];
  const { fileVertex } = mesh;
  for (const [start, list] of [...leaving.entries()].sort(([a], [b]) => a - b)) {
    while (list.length > 0) {
      const loop: [number, number][] = [];
      for (let v = start, next = list.pop(); next !== undefined; next = leaving.get(v)?.pop()) {
        loop.push([fileVertex[v], fileVertex[next]]);
        v = next;
      }
      loops.push(loop);
    }
  }
  return loops;
}
