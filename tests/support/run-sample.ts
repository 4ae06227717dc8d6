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

/** A sample that was run through the whole chain. */
export interface MadeSample {
  readonly project: Project;
  readonly pipeline: Pipeline;
  readonly outcome: Outcome;
}

/** How samples are run; a run that is to be known again is asked for in the same way. */
export const SAMPLE_RUN = { date: '2026-01-01' } as const;

const made = new Map<string, Promise<MadeSample>>();

/**
 * A sample as it comes, run through the whole chain once for all files of tests that share a process. Its pipeline remembers that run, so that
 * another paper, say, is all that is made anew. Not for tests of what is remembered, and of what a first run gives.
 */
export function madeSample(name: string): Promise<MadeSample> {
  const known = made.get(name) ?? makeSample(name);
  made.set(name, known);
  return known;
}

/** The same in a pipeline of its own, and of another project where it is changed. Throws when the chain stops on the way. */
export async function makeSample(
  name: string,
  change: (project: Project) => Project = (project) => project,
): Promise<MadeSample> {
  const { project: plain, pipeline } = await sampleProject(name);
  const project = change(plain);
  const outcome = await pipeline.run(project, QUIET_WORK, SAMPLE_RUN);
  if (outcome.stopped !== null) throw new Error(outcome.stopped.problem.text);
  return { project, pipeline, outcome };
}

/** What the whole chain gives of a sample: as it comes that of `madeSample`, else made anew. */
export async function runSample(name: string, change?: (project: Project) => Project): Promise<Outcome> {
  return (await (change === undefined ? madeSample(name) : makeSample(name, change))).outcome;
}
