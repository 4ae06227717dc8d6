// Random seams on twelve sculpts, each set run from the file to pages and held against the promise of every record:
//   npm run hostile -- sets=10000 seed=1 mesh=all minutes=60 pages=1 pdf=53
// One set alone, as a fault names it: npm run hostile -- mesh=ball only=1234567
// Times are those of the processor.
// sets: how many in all; seed: where chance begins; mesh: one of the twelve by its name; pages: every so many are laid on sheets and pages, the others
// end in templates and dry fit; pdf: of every so many of all the finished PDF too, where they are laid; 0: of none; from: the first one, from 0.
import { testFont } from '../support/run-sample.ts';
import { fileFaults } from './outcome-faults.ts';
import { runToPieces } from './run-to-pieces.ts';
import { SEAM_MESHES } from './seam-meshes.ts';
import { openMesh, runTrial, seamTrial, type OpenedMesh } from './seam-sets.ts';
import { say, Trials, Words } from './trials.ts';

const words = new Words();
const font = testFont();
const wanted = words.text('mesh', 'all');
const meshes = SEAM_MESHES.filter(({ name }) => wanted === 'all' || name === wanted);
if (meshes.length === 0) throw new Error(`no mesh ${wanted}: ${SEAM_MESHES.map(({ name }) => name).join(', ')}`);
const opened = await Promise.all(meshes.map(openMesh));
const [sets, seed, from] = [words.figure('sets', 240), words.figure('seed', 1), words.figure('from', 0)];
// With the twelve in turn, a prime number reaches all of them.
const [pages, pdf] = [words.figure('pages', 1), words.figure('pdf', 53)];
const end = performance.now() + 60_000 * words.figure('minutes', 600);
const trials = new Trials(words.has('only'));

async function trial(mesh: OpenedMesh, own: number, isLaid: boolean, withPdf: boolean): Promise<void> {
  const { name, project } = seamTrial(mesh, own);
  await trials.run(
    mesh.name,
    `mesh="${mesh.name}" only=${own}, ${name}`,
    () =>
      isLaid
        ? runTrial(mesh, project)
        : runToPieces(project, new Map([[mesh.hash, { fileName: 'sculpt.obj', bytes: mesh.bytes }]])),
    (outcome) => (withPdf && isLaid ? fileFaults(outcome, font) : Promise.resolve([])),
  );
}

for (const mesh of opened) say(`${mesh.name}: ${mesh.sculpt.mesh.triangles.length / 3} triangles`);
if (words.has('only')) {
  for (const mesh of opened) await trial(mesh, words.figure('only', 0), true, true);
} else {
  // Seeds far apart, so that runs with neighbouring seeds share no trial.
  for (let i = from; i < sets && performance.now() < end; i += 1)
    await trial(opened[i % opened.length], 1_000_003 * seed + i, i % pages === 0, pdf > 0 && i % pdf === 0);
  trials.finish();
}
