// Times flattening of one patch at full quality: node scripts/run-ts.mjs tests/bench/flatten.bench.ts [triangles…]
// The reference mask is subdivided to about 1k, 5k, 20k and 100k triangles; median of 7 after one warm run, and a checksum beside it.
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import { cutPatches } from '../../src/steps/cut/cut-patches.ts';
import { flattenPatch } from '../../src/steps/flatten/flatten-patch.ts';
import { readTestObj } from '../support/read-test-obj.ts';
import { meshOf } from '../support/meshes.ts';

/** Every triangle into four, corners kept, middles of edges pushed out a little so that the surface stays curved. */
function subdivided(mesh: Mesh): Mesh {
  const topology = topologyOf(mesh);
  const count = mesh.positions.length / 3;
  const points = Array.from({ length: count }, (_, v): [number, number, number] => [mesh.positions[3 * v], mesh.positions[3 * v + 1], mesh.positions[3 * v + 2]]);
  for (let e = 0; e < topology.edgeCount; e += 1) {
    const [v, w] = [points[topology.edgeVertices[2 * e]], points[topology.edgeVertices[2 * e + 1]]];
    points.push([(v[0] + w[0]) / 2, (v[1] + w[1]) / 2, (v[2] + w[2]) / 2]);
  }
  const faces: number[][] = [];
  for (let t = 0; t < mesh.triangles.length / 3; t += 1) {
    const [a, b, c] = mesh.triangles.subarray(3 * t, 3 * t + 3);
    const [ab, bc, ca] = [0, 1, 2].map((k) => count + topology.edgeOfHalfedge[3 * t + k]);
    faces.push([a, ab, ca], [ab, b, bc], [ca, bc, c], [ab, bc, ca]);
  }
  return meshOf(points, faces);
}

const median = (values: number[]): number => values.sort((a, b) => a - b)[Math.floor(values.length / 2)];

let mesh = readTestObj(new URL('../reference/flatten/mask-1k.obj', import.meta.url));
const most = Math.max(...process.argv.slice(2).map(Number).filter(Number.isFinite), 70_000);
for (; mesh.triangles.length / 3 <= most; mesh = subdivided(mesh)) {
  const seams = { isSeam: new Uint8Array(topologyOf(mesh).edgeCount), count: 0 };
  const [patch] = cutPatches(mesh, seams, mesh.positions).patches;
  const run = async (start?: Float64Array) => {
    const began = performance.now();
    const result = await flattenPatch(patch, mesh.positions, start === undefined ? {} : { start }, QUIET_WORK);
    if (!result.ok) throw new Error(result.problem.text);
    return { ms: performance.now() - began, flat: result.value };
  };
  const { flat } = await run();
  const cold: number[] = [];
  const warm: number[] = [];
  for (let i = 0; i < 7; i += 1) {
    cold.push((await run()).ms);
    warm.push((await run(flat.uv)).ms);
  }
  process.stdout.write(
    `${mesh.triangles.length / 3} triangles: ${median(cold).toFixed(0)} ms, again from the last result ${median(warm).toFixed(0)} ms; energy ${flat.energy.toFixed(6)}, ${flat.solve.steps} Newton steps, ${flat.flipped} flipped, checksum ${flat.uv.reduce((sum, x) => sum + Math.abs(x), 0).toFixed(6)}\n`,
  );
}
