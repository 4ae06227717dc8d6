// How soon pieces follow a seam that is dragged: npm run bench:drag [-- rounds=40]
// The sample helm split to 23,800 triangles, 6 mm. Every round drags an inner corner of a seam to a place a few edges beside it, as the
// hand does it in the window (`moveReach`, `edgePath`, `moveSeam`), and back. Told: time from the new place to the first shapes of all
// pieces, to the pieces laid flat, and to everything worked out, in one thread; median, 95th of 100 and longest.
import { contentHash } from '../../src/base/hash.ts';
import { seededRandom } from '../../src/base/random.ts';
import type { Work } from '../../src/base/work.ts';
import { moveReach } from '../../src/app/move-reach.ts';
import { expectOk } from '../support/expect-ok.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { moveSeam } from '../../src/project/commands.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project, SculptPart } from '../../src/project/project.ts';
import { edgePath } from '../../src/steps/seams/edge-path.ts';
import { readBenchWords } from './bench-words.ts';
import { helmModel } from './helm-model.ts';
import { textTable } from './text-table.ts';

/** Triangles along each side of an old one. */
const PARTS = 5;
/** Edges that a corner is dragged. */
const FEWEST = 2;
const MOST = 8;

const { rounds } = readBenchWords(process.argv.slice(2), ['helm'], ['helm']);
const { obj, seams, triangles } = await helmModel(PARTS);
const bytes = new TextEncoder().encode(obj);
const hash = await contentHash(bytes);
const fresh = newProject('helm', { hash, fileName: 'helm.obj', format: 'obj' });
const first: SculptPart = { ...fresh.parts[0], scale: { by: 'unit', unit: 'mm' }, seams: { edges: seams, paths: [] } };
const whole: Project = { ...fresh, parts: [first] };
const pipeline = new Pipeline();
pipeline.putSource(hash, { fileName: 'helm.obj', bytes });

interface Times {
  readonly shapes: number;
  readonly flat: number;
  readonly all: number;
}

async function timed(project: Project): Promise<Times & { readonly energy: number }> {
  const start = performance.now();
  let shapes = NaN;
  let flat = NaN;
  const since = (): number => performance.now() - start;
  const work: Work = {
    pause: (_done, text) => {
      if (text === 'adding edges, marks and words' && Number.isNaN(flat)) flat = since();
      return undefined;
    },
  };
  const onEarly = ({ flats, isFinal }: { flats: readonly unknown[]; isFinal: readonly boolean[] }): void => {
    if (Number.isNaN(shapes) && flats.every((one, i) => one !== null || isFinal[i])) shapes = since();
  };
  const { flats, stopped } = await pipeline.run(project, work, { onEarly });
  if (stopped !== null) throw new Error(stopped.problem.text);
  const energy = (flats ?? []).reduce((sum, one) => sum + (one?.energy ?? 0), 0);
  return { shapes: Number.isNaN(shapes) ? flat : shapes, flat, all: since(), energy };
}

await timed(whole);
const { sculpt, cut } = await pipeline.run(whole, { pause: () => undefined });
if (sculpt === null || cut === null) throw new Error('the helm cannot be parted');
const { mesh } = sculpt;
const { edgeVertices, edgeCount } = topologyOf(mesh);
const around = new Map<number, number[]>();
for (let e = 0; e < edgeCount; e += 1) {
  for (const k of [0, 1]) {
    const v = edgeVertices[2 * e + k];
    around.set(v, [...(around.get(v) ?? []), edgeVertices[2 * e + 1 - k]]);
  }
}
const random = seededRandom(20);
const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)];
const movable = cut.chains.filter(({ kind, vertices }) => kind !== 'open' && vertices.length > 12);
const pairsOf = (way: readonly number[]): [number, number][] =>
  way.slice(1).map((w, i): [number, number] => [mesh.fileVertex[way[i]], mesh.fileVertex[w]]);
const times: Times[] = [];
let checksum = 0;
for (let round = 0; times.length < rounds && round < 4 * rounds; round += 1) {
  const chain = pick(movable);
  const at = 3 + Math.floor(random() * (chain.vertices.length - 6));
  let to = chain.vertices[at];
  for (let i = FEWEST + Math.floor(random() * (MOST - FEWEST)); i > 0; i -= 1) to = pick(around.get(to) ?? [to]);
  if (chain.vertices.includes(to)) continue;
  const [from, end] = moveReach(mesh.positions, chain, at, to);
  const added = [chain.vertices[from], to, chain.vertices[end]];
  const ways = [edgePath(mesh, added[0], added[1]), edgePath(mesh, added[1], added[2])].map(expectOk);
  const before = { seams: first.seams, settings: [], edgeWishes: [] };
  const gone = pairsOf([...chain.vertices.slice(from, end + 1)]);
  const moved = moveSeam(before, gone, ways.flatMap(pairsOf), 'drag').apply(whole);
  try {
    const { energy, ...time } = await timed(moved);
    times.push(time);
    checksum += energy;
  } catch {
    // A seam dragged over another parts nothing new: the next one.
  }
  await timed(whole);
}
const row = (name: string, of: (time: Times) => number): string[] => {
  const sorted = times.map(of).sort((a, b) => a - b);
  const at = (share: number): string =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))].toFixed(0);
  return [name, at(0.5), at(0.95), at(1)];
};
process.stdout.write(`The helm in ${triangles} triangles, ${times.length} drags, ms from the new place of a corner
${textTable(
  ['to', 'median', '95 %', 'longest'],
  [
    row('first shapes of all pieces', ({ shapes }) => shapes),
    row('all pieces laid flat', ({ flat }) => flat),
    row('everything worked out', ({ all }) => all),
  ],
)}
checksum of the energies ${checksum.toFixed(6)}
`);
