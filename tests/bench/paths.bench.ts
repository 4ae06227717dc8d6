// What a seam across faces costs: npm run bench:paths [-- rounds=5]
// The sample helm split to 24k triangles, a line between far corners of its largest piece. Told: cutting the mesh along it, the whole run after it was
// drawn and after its end moved on along the border, beside that after a seam along edges changed; the longest stretch without a pause; how
// many flat shapes are known again; and by how much the area changed.
import { contentHash } from '../../src/base/hash.ts';
import { cutAlong } from '../../src/mesh/lines/cut-along.ts';
import { nearShortestLine } from '../../src/mesh/lines/shortest-line.ts';
import { triangleArea } from '../../src/mesh/measure.ts';
import { triangleCount, type Mesh } from '../../src/mesh/mesh.ts';
import { surfaceOf } from '../../src/mesh/surface.ts';
import type { SeamMarks } from '../../src/model/seams.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project, SculptPart } from '../../src/project/project.ts';
import { readBenchWords } from './bench-words.ts';
import { helmModel } from './helm-model.ts';
import { StretchClock } from './stretch-clock.ts';
import { textTable } from './text-table.ts';
import { msText, timesText } from './times.ts';

/** Triangles along each side of an old one: 23,800 in all. */
const PARTS = 5;

const { rounds } = readBenchWords(process.argv.slice(2), ['helm'], ['helm']);
const { obj, seams, triangles } = await helmModel(PARTS);
const bytes = new TextEncoder().encode(obj);
const hash = await contentHash(bytes);
const fresh = newProject('helm', { hash, fileName: 'helm.obj', format: 'obj' });
/** What does not change stays the same object, as a command leaves it. */
const part: SculptPart = { ...fresh.parts[0], scale: { by: 'unit', unit: 'mm' } };
const parted = (marks: SeamMarks): Project => ({
  ...fresh,
  parts: [{ ...part, seams: marks }],
});
const PLAIN = parted({ edges: seams, paths: [] });

const areaOf = (mesh: Mesh): number =>
  [...Array(triangleCount(mesh)).keys()].reduce((sum, t) => sum + triangleArea(mesh.positions, mesh.triangles, t), 0);

/** Corners round the largest piece, and two of them that lie far apart. */
function farCorners({ cut, sculpt }: Outcome): { loop: readonly number[]; from: number; to: number } {
  if (cut === null || sculpt === null) throw new Error('the helm is not parted');
  const patch = cut.patches.reduce((most, one) => (one.meshTriangles.length > most.meshTriangles.length ? one : most));
  const loop = Array.from(patch.loops[0], (v) => patch.meshVertices[v]);
  const { positions } = sculpt.mesh;
  const apart = (v: number): number =>
    Math.hypot(...[0, 1, 2].map((i) => positions[3 * v + i] - positions[3 * loop[0] + i]));
  const to = [...loop.keys()].reduce((far, i) => (apart(loop[i]) > apart(loop[far]) ? i : far), 0);
  return { loop, from: 0, to };
}

interface Timed {
  readonly outcome: Outcome;
  readonly ms: number;
  readonly longestMs: number;
}

async function timed(pipeline: Pipeline, project: Project): Promise<Timed> {
  const clock = new StretchClock();
  const begun = performance.now();
  const outcome = await pipeline.run(project, clock);
  const ms = performance.now() - begun;
  return { outcome, ms, longestMs: Math.max(...[...clock.phases.values()].map((phase) => phase.longestMs)) };
}

const rows = new Map<string, { ms: number[]; longestMs: number[]; known: string }>();
const note = (what: string, before: Outcome, { outcome, ms, longestMs }: Timed): void => {
  const row = rows.get(what) ?? { ms: [], longestMs: [], known: '' };
  row.ms.push(ms);
  row.longestMs.push(longestMs);
  const flats = outcome.flats ?? [];
  row.known = `${flats.filter((flat) => before.flats?.includes(flat) === true).length} of ${flats.length}`;
  rows.set(what, row);
};
const cutMs: number[] = [];
for (let round = 0; round < rounds; round += 1) {
  const pipeline = new Pipeline();
  pipeline.putSource(hash, { fileName: 'helm.obj', bytes });
  const { outcome: first } = await timed(pipeline, PLAIN);
  const mesh = first.sculpt?.mesh;
  if (mesh === undefined) throw new Error('the helm cannot be read');
  const { loop, from, to } = farCorners(first);
  const line = nearShortestLine(
    surfaceOf(mesh),
    { at: 'vertex', vertex: loop[from] },
    { at: 'vertex', vertex: loop[to] },
  );
  if (!line.ok) throw new Error(line.problem.text);
  const begun = performance.now();
  const cut = cutAlong(mesh, [line.value.line]);
  cutMs.push(performance.now() - begun);
  if (round === 0) {
    const { points } = line.value.line;
    console.log(
      `${triangles} triangles; a line of ${line.value.lengthMm.toFixed(0)} mm over ${points.length} points; area changed by ${Math.abs(areaOf(cut.mesh) / areaOf(mesh) - 1).toExponential(1)}`,
    );
  }
  const drawn = (end: number): Project =>
    parted({
      edges: seams,
      paths: [
        { points: [loop[from], loop[end % loop.length]].map((v) => ({ vertex: mesh.fileVertex[v] })), kind: 'butt' },
      ],
    });
  const path = await timed(pipeline, drawn(to));
  note('a line drawn', first, path);
  note('its end moved', path.outcome, await timed(pipeline, drawn(to + 3)));
  note('undone', first, await timed(pipeline, PLAIN));
  note('five seam edges fewer', first, await timed(pipeline, parted({ edges: seams.slice(5), paths: [] })));
}
console.log(`cutting the mesh along it, ms: ${timesText(cutMs)}\n`);
console.log(
  textTable(
    ['after', 'ms', 'longest stretch, ms', 'flat shapes known'],
    [...rows].map(([what, { ms, longestMs, known }]) => [what, timesText(ms), msText(Math.max(...longestMs)), known]),
  ),
);
