import { DisjointSets } from '../base/disjoint-sets.ts';
import { Memo } from '../base/memo.ts';
import { triangleCount, vertexCount, type Mesh } from '../mesh/mesh.ts';
import { nextHalfedge, topologyOf, triangleOfHalfedge } from '../mesh/topology.ts';
import type { Region } from '../model/flatten-settings.ts';
import { NO_SEAMS, type SeamMarks } from '../model/seams.ts';
import type { SculptPart } from '../project/project.ts';
import type { OwnSurface } from './sculpt-run.ts';

/** Results kept: a maker goes a few steps back and forth over a few areas. */
const KEPT = 16;

type Own = Omit<OwnSurface, 'part'> & {
  readonly wishes: Pick<SculptPart, 'name' | 'seams' | 'pieceSettings'>;
  readonly areDiscs: boolean;
};

const NONE: readonly never[] = [];

/** The surfaces of raised sheets, and what is remembered of them. */
export class RaisedAreas {
  readonly #known = new Memo<unknown[], Own>(KEPT);

  /**
   * The sculpt inside an area, for a sheet that ends at its border; wishes for the pieces of the wall are not the sheet's.
   * @param drawn  the sculpt cut along its paths, if any: it is taken where the sheet has to be parted, and `isOnLines` then says so.
   */
  of(
    mesh: Mesh,
    part: SculptPart,
    drawn: OwnSurface | null,
    area: Region,
  ): { readonly own: OwnSurface; readonly isOnLines: boolean } {
    const onSculpt = this.#inside(mesh, part, area);
    // Paths matter only where it is parted as the wall under it is.
    const isOnLines = drawn !== null && !onSculpt.areDiscs;
    const found = isOnLines ? this.#inside(drawn.mesh, drawn.part, area) : onSculpt;
    const { sourceOfTriangle } = found;
    const own = {
      ...found,
      sourceOfTriangle: isOnLines ? sourceOfTriangle.map((t) => drawn.sourceOfTriangle[t]) : sourceOfTriangle,
      part: { ...part, ...found.wishes, seamSettings: NONE, edgeWishes: NONE },
    };
    return { own, isOnLines };
  }

  #inside(mesh: Mesh, part: SculptPart, area: Region): Own {
    const key = [mesh, area.faces, area.name, part.seams];
    return this.#known.get(key) ?? this.#known.set(key, inside(mesh, part, area));
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
  return { mesh: own, sourceOfTriangle, areDiscs, wishes: { name, seams: marks, pieceSettings: settings } };
}

/** The lowest face of each sheet that hangs together, and whether each has one border and no hole: Euler's formula. */
function sheetsOf(mesh: Mesh): { sheets: readonly number[]; areDiscs: boolean } {
  const { triangles, faceOfTriangle } = mesh;
  const sets = new DisjointSets(vertexCount(mesh));
  triangles.forEach((v, h) => sets.join(v, triangles[nextHalfedge(h)]));
  const lowest = new Map<number, number>();
  faceOfTriangle.forEach((face, t) => {
    const root = sets.find(triangles[3 * t]);
    lowest.set(root, Math.min(lowest.get(root) ?? Infinity, face));
  });
  const characteristic = new Set(triangles).size - topologyOf(mesh).edgeCount + triangleCount(mesh);
  return { sheets: [...lowest.values()].sort((p, q) => p - q), areDiscs: characteristic === lowest.size };
}

/** Marks between two faces of the surface. */
function seamsInside(mesh: Mesh, { edges }: SeamMarks): SeamMarks {
  const topology = topologyOf(mesh);
  const uses = ([a, b]: SeamMarks['edges'][number]): number =>
    topology.usesOfEdge[topology.edgeBetween(mesh.vertexOfFile[a], mesh.vertexOfFile[b])] ?? 0;
  return { edges: edges.filter((pair) => uses(pair) === 2), paths: [] };
}

/** The lines round an area that runs through the sculpt, in file numbers: runs of edges, each from the end of the last. */
export function outlineOf(mesh: Mesh, { faces }: Region): readonly (readonly (readonly [number, number])[])[] {
  const wanted = new Set(faces);
  const isIn = (h: number): boolean => wanted.has(mesh.faceOfTriangle[triangleOfHalfedge(h)]);
  const { twin } = topologyOf(mesh);
  // Along the border each corner has one edge that leaves it, but where two parts of the area touch.
  const leaving = new Map<number, number[]>();
  mesh.triangles.forEach((v, h) => {
    if (!isIn(h) || twin[h] < 0 || isIn(twin[h])) return;
    leaving.set(v, [...(leaving.get(v) ?? []), mesh.triangles[nextHalfedge(h)]]);
  });
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
