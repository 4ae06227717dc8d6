/**
 * A surface of triangles in mm, frozen after it is made. Arrays are packed and must not be written to.
 *
 *   positions        x y z  x y z  …          one triple per vertex, mm, model space
 *   triangles        a b c  a b c  …          counter-clockwise seen from the outside
 *   faceOfTriangle   f f …                    polygon of the file (or of a repair) that holds the triangle
 */
export interface Mesh {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  readonly faceOfTriangle: Uint32Array;
  /** How many polygons the file had. Faces that were dropped keep their number, so `faceOfTriangle` may skip some. */
  readonly faceCount: number;
  /** For each vertex the lowest of its numbers in the file (counted from 0); repairs append numbers. */
  readonly fileVertex: Uint32Array;
  /** For each number of the file the vertex it became, or -1 where no face uses it. */
  readonly vertexOfFile: Int32Array;
  /** Names of groups, objects or materials of the file, and for each polygon the index of its name, or -1. */
  readonly groupNames: readonly string[];
  readonly groupOfFace: Int32Array;
}

export const vertexCount = (mesh: Mesh): number => mesh.positions.length / 3;
export const triangleCount = (mesh: Mesh): number => mesh.triangles.length / 3;
