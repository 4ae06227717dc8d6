import { clipPlaces, type Finding } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { topologyOf } from '../../mesh/topology.ts';
import type { SeamMarks, SeamSet } from '../../model/seams.ts';

/**
 * Brings marks in file numbers onto the mesh. Any number of joined corners is accepted.
 * @param marks  edges as pairs of file numbers. Paths have become edges of a finer mesh before (`finerMarks`): those that have not are passed over.
 * @param strict true for a seam file, where a pair that is no edge is the file's fault; false for a project, whose marks may have
 *               lost their edge to a repair: those are listed in a note and left out.
 * @returns which edges of the topology are seams. Fails with `seams/no-vertex` or `seams/no-edge`.
 */
export function seamSetFromMarks(mesh: Mesh, marks: SeamMarks, strict: boolean): Result<SeamSet> {
  const topology = topologyOf(mesh);
  const isSeam = new Uint8Array(topology.edgeCount);
  const lost: (readonly [number, number])[] = [];
  let count = 0;
  for (const [place, pair] of marks.edges.entries()) {
    const [v, w] = [vertexOf(mesh, pair[0]), vertexOf(mesh, pair[1])];
    const edge = v < 0 || w < 0 ? -1 : topology.edgeBetween(v, w);
    if (edge < 0) {
      if (strict) return refuse(mesh, place, pair, v, w);
      lost.push(pair);
    } else if (topology.twin[topology.halfedgeOfEdge[edge]] >= 0 && isSeam[edge] === 0) {
      isSeam[edge] = 1;
      count += 1;
    }
  }
  return ok({ isSeam, count }, lost.length === 0 ? [] : [lostNote(lost)]);
}

const vertexOf = (mesh: Mesh, fileNumber: number): number => mesh.vertexOfFile[fileNumber] ?? -1;

function refuse(mesh: Mesh, place: number, pair: readonly [number, number], v: number, w: number): Result<SeamSet> {
  const named = `edge ${place + 1} of the seam file, [${pair[0]}, ${pair[1]}],`;
  if (v < 0 || w < 0) {
    const number = v < 0 ? pair[0] : pair[1];
    const last = mesh.vertexOfFile.length - 1;
    return fail(
      'seams/no-vertex',
      `In ${named} corner ${number} is not used by any face of the model (corners are counted from 0 to ${last}).`,
    );
  }
  if (v === w) return fail('seams/no-edge', `In ${named} both corners lie on one spot: take it out of the file.`);
  return fail(
    'seams/no-edge',
    `In ${named} the two corners are not joined by an edge: seams follow the edges of the model.`,
    {
      vertices: [v, w],
    },
  );
}

function lostNote(lost: readonly (readonly [number, number])[]): Finding {
  return {
    code: 'seams/lost',
    severity: 'warning',
    text: `${lost.length} marked ${lost.length === 1 ? 'edge is' : 'edges are'} no longer part of the sculpt and left out: mark the seam again where it is missing (corners ${clipPlaces(
      lost,
    )
      .slice(0, 5)
      .map(([a, b]) => `${a}–${b}`)
      .join(', ')}).`,
    value: lost.length,
    where: {},
  };
}
