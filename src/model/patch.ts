import type { Finding } from '../base/finding.ts';
import type { SeamMarks } from './seams.ts';

/**
 * Triangles bounded by seams, in their own numbering. A vertex of the mesh that lies on a seam inside the patch (a dart, a closing
 * seam) appears once for each side.
 */
export interface Patch {
  /** Triangles of the mesh, ascending. */
  readonly meshTriangles: Uint32Array;
  /** Three local vertices per triangle, in the order of `meshTriangles`. */
  readonly triangles: Uint32Array;
  /** Vertex of the mesh for each local vertex. */
  readonly meshVertices: Uint32Array;
  /** Boundary loops as local vertices with the patch on their left; the outer one (the longest on the sculpt) first, then by length. */
  readonly loops: readonly Uint32Array[];
  /** vertices - edges + triangles of the patch; a disc has 1, a ring 0. */
  readonly euler: number;
  readonly kind: PatchKind;
  readonly findings: readonly Finding[];
}

/**
 * disc: one loop. windowed: can be laid flat with holes in it (genus 0, several loops). closed: no loop at all. handled: has a handle.
 * The last two cannot be laid flat before they are cut.
 */
export type PatchKind = 'disc' | 'windowed' | 'closed' | 'handled';

/** A cut the program offers: edges of the mesh (vertex pairs of the mesh) that, made into seams, open the patch. */
export interface CutOffer {
  readonly patch: number;
  readonly edges: readonly (readonly [number, number])[];
  /** What marks it in the words of the file; left out where its edges, named by their corners, do. */
  readonly marks?: SeamMarks;
  readonly lengthMm: number;
  readonly text: string;
}
