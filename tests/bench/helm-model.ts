import { QUIET_WORK } from '../../src/base/work.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import { sampleProject } from '../support/run-sample.ts';
import { objText } from './obj-text.ts';
import { splitTriangles } from './split-triangles.ts';

/** The sample helm as a dense sculpt: every triangle parted into `parts` squared ones, with its own seams. */
export async function helmModel(parts: number): Promise<{ obj: string; seams: [number, number][]; triangles: number }> {
  const { project, pipeline } = await sampleProject('helm');
  const { sculpt, part } = await pipeline.run(project, QUIET_WORK);
  if (sculpt === null) throw new Error('the helm cannot be read');
  const { mesh } = sculpt;
  const fine = splitTriangles(mesh, parts);
  const { edgeCount, edgeVertices } = topologyOf(mesh);
  const edges = new Map<string, number>();
  for (let e = 0; e < edgeCount; e += 1) edges.set(`${edgeVertices[2 * e]} ${edgeVertices[2 * e + 1]}`, e);
  const seams = part!.seams.edges.flatMap(([a, b]) => {
    const [v, w] = [mesh.vertexOfFile[a], mesh.vertexOfFile[b]];
    const e = edges.get(`${v} ${w}`) ?? edges.get(`${w} ${v}`);
    if (e === undefined) throw new Error(`no edge ${v} ${w}`);
    // New points of an edge come after the old vertices, edge by edge, from its first vertex on.
    const first = mesh.positions.length / 3 + (parts - 1) * e;
    const inside = Array.from({ length: parts - 1 }, (_, i) => first + i);
    const way = [edgeVertices[2 * e], ...inside, edgeVertices[2 * e + 1]];
    return way.slice(1).map((next, i): [number, number] => [way[i], next]);
  });
  return { obj: objText(fine), seams, triangles: fine.triangles.length / 3 };
}
