import { readFileSync } from 'node:fs';
import { contentHash } from '../../src/base/hash.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project } from '../../src/project/project.ts';

export const SAMPLE_NAMES = ['helm', 'bracer', 'shoulder-plate', 'maul-head', 'lantern'] as const;

const fileOf = (name: string): URL => new URL(`../../samples/${name}`, import.meta.url);

/** DejaVu Sans as the writers take it. */
export const testFont = (): Uint8Array =>
  new Uint8Array(readFileSync(new URL('../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf', import.meta.url)));

/** A sample with its own seams, in mm, and a pipeline that holds its bytes. */
export async function sampleProject(name: string): Promise<{ project: Project; pipeline: Pipeline }> {
  const bytes = new Uint8Array(readFileSync(fileOf(`${name}.obj`)));
  const hash = await contentHash(bytes);
  const fileName = `${name}.obj`;
  const { edges } = JSON.parse(readFileSync(fileOf(`${name}.seams.json`), 'utf8')) as { edges: [number, number][] };
  const first = newProject(name, { hash, fileName, format: 'obj' });
  const pipeline = new Pipeline();
  pipeline.putSource(hash, { fileName, bytes });
  const part = { ...first.parts[0], scale: { by: 'unit', unit: 'mm' } as const, seams: { edges, paths: [] } };
  return { project: { ...first, parts: [part] }, pipeline };
}

/** The whole chain run on a sample. Throws when it stops on the way. */
export async function runSample(
  name: string,
  change: (project: Project) => Project = (project) => project,
): Promise<Outcome> {
  const { project, pipeline } = await sampleProject(name);
  const outcome = await pipeline.run(change(project), QUIET_WORK, { date: '2026-01-01' });
  if (outcome.stopped !== null) throw new Error(outcome.stopped.problem.text);
  return outcome;
}
