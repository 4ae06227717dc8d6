import { readFileSync } from 'node:fs';
import { cross3, dot3, length3, sub3, unit3, vec3, type Vec3 } from '../../src/geom/vec.ts';

/** A sample as its files say it, read with a few lines of our own so that the product's reader is not its own witness. */
export interface SampleFiles {
  readonly vertices: readonly Vec3[];
  readonly faces: readonly (readonly number[])[];
  /** The `g` name of each face. */
  readonly panels: readonly string[];
  readonly seams: readonly (readonly [number, number])[];
}

export function readSample(objFile: string, seamFile: string): SampleFiles {
  const vertices: Vec3[] = [];
  const faces: number[][] = [];
  const panels: string[] = [];
  let panel = '';
  for (const row of readFileSync(`samples/${objFile}`, 'utf8').split('\n')) {
    const [word, ...rest] = row.split(' ');
    if (word === 'v') vertices.push(vec3(Number(rest[0]), Number(rest[1]), Number(rest[2])));
    if (word === 'g') panel = rest[0];
    if (word === 'f') {
      faces.push(rest.map((n) => Number(n) - 1));
      panels.push(panel);
    }
  }
  const { version, edges } = JSON.parse(readFileSync(`samples/${seamFile}`, 'utf8')) as {
    version: number;
    edges: [number, number][];
  };
  if (version !== 1) throw new Error(`seam file version ${version}`);
  return { vertices, faces, panels, seams: edges };
}

export type Triangle = readonly [Vec3, Vec3, Vec3];

/** The faces fanned from their first corner; the samples' polygons are convex, which a test holds. */
export function trianglesOf({ vertices, faces }: SampleFiles): Triangle[] {
  return faces.flatMap((face) =>
    face.slice(2).map((c, k): Triangle => [vertices[face[0]], vertices[face[k + 1]], vertices[c]]),
  );
}

/** Twice the area times the unit normal. */
export const areaVector = ([a, b, c]: Triangle): Vec3 => cross3(sub3(b, a), sub3(c, a));

/** Newell's normal of a polygon, unit length. */
export function faceNormal(sample: SampleFiles, face: number): Vec3 {
  const points = sample.faces[face].map((v) => sample.vertices[v]);
  let sum = vec3(0, 0, 0);
  for (const [k, p] of points.entries()) {
    const n = cross3(p, points[(k + 1) % points.length]);
    sum = vec3(sum.x + n.x, sum.y + n.y, sum.z + n.z);
  }
  return unit3(sum);
}

/** Corner angle of `face` at its corner `k`, radians. */
export function cornerAngle(sample: SampleFiles, face: number, k: number): number {
  const corners = sample.faces[face];
  const n = corners.length;
  const at = sample.vertices[corners[k]];
  const a = sub3(sample.vertices[corners[(k + 1) % n]], at);
  const b = sub3(sample.vertices[corners[(k + n - 1) % n]], at);
  return Math.atan2(length3(cross3(a, b)), dot3(a, b));
}
