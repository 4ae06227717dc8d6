// Times the whole chain on domes of 5k, 50k and 500k triangles: node scripts/run-ts.mjs tests/bench/chain.bench.ts [sizes…]
// Prints for each the wall time of every phase, the peak memory of the process and a checksum of the flat pieces.
import { contentHash } from '../../src/base/hash.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project } from '../../src/project/project.ts';
import { domeModel } from './dome-model.ts';
import { PhaseClock } from './phase-clock.ts';

const sizes = process.argv.slice(2).map(Number).filter(Number.isFinite);

for (const size of sizes.length > 0 ? sizes : [5_000, 50_000, 500_000]) {
  const dome = domeModel(size);
  const bytes = new TextEncoder().encode(dome.obj);
  const hash = await contentHash(bytes);
  const first = newProject('dome', { hash, fileName: 'dome.obj', format: 'obj' });
  const project: Project = {
    ...first,
    parts: [{ ...first.parts[0], scale: { by: 'unit', unit: 'mm' }, seams: { edges: dome.seams, paths: [] } }],
  };
  const pipeline = new Pipeline();
  pipeline.putSource(hash, { fileName: 'dome.obj', bytes });
  const clock = new PhaseClock();
  const start = performance.now();
  const outcome = await pipeline.run(project, clock);
  const total = performance.now() - start;
  const thicker: Project = {
    ...project,
    parts: [{ ...project.parts[0], layers: [{ ...project.parts[0].layers[0], thicknessMm: 8 }] }],
  };
  const again = performance.now();
  await pipeline.run(thicker, clock);
  const thickness = performance.now() - again;
  const paper = performance.now();
  await pipeline.run({ ...project, paper: { ...project.paper, name: 'A3' } }, clock);
  const repaper = performance.now() - paper;
  const checksum = (outcome.flats ?? []).reduce((sum, flat) => sum + (flat?.energy ?? 0), 0);
  const phases = [...clock.ms].filter(([, ms]) => ms >= 1).map(([phase, ms]) => `${phase} ${ms.toFixed(0)}`);
  process.stdout.write(
    [
      `${dome.triangles} triangles, ${outcome.pieces?.length ?? 0} pieces: first run ${total.toFixed(0)} ms, new thickness ${thickness.toFixed(0)} ms, new paper ${repaper.toFixed(0)} ms`,
      `  peak memory ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB, checksum ${checksum.toFixed(9)}${outcome.stopped === null ? '' : `, stopped: ${outcome.stopped.problem.text}`}`,
      `  all three runs by phase, ms: ${phases.join(' · ')}`,
      '',
    ].join('\n'),
  );
}
