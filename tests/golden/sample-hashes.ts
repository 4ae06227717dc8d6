import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { QUIET_WORK } from '../../src/base/work.ts';
import { machineFiles } from '../../src/pipeline/machine-files.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { writeShopFiles } from '../../src/pipeline/shop-files.ts';
import { writeFiles } from '../../src/pipeline/write-files.ts';
import { readProjectFile } from '../../src/project/project-file.ts';
import { expectOk } from '../support/expect-ok.ts';
import { madeSample, SAMPLE_NAMES, SAMPLE_RUN, testFont, type MadeSample } from '../support/run-sample.ts';

const KIT = 'kit';

export const HASHED_NAMES: readonly string[] = [...SAMPLE_NAMES, KIT];

/** The whole props of the kit, as their file has them. */
async function madeKit(): Promise<MadeSample> {
  const text = readFileSync(new URL('../../samples/kit.foamloft.json', import.meta.url), 'utf8');
  const { project, sources } = expectOk(await readProjectFile(text, 'kit'));
  const pipeline = new Pipeline();
  for (const [hash, source] of sources) pipeline.putSource(hash, source);
  const outcome = await pipeline.run(project, QUIET_WORK, SAMPLE_RUN);
  if (outcome.stopped !== null) throw new Error(outcome.stopped.problem.text);
  return { project, pipeline, outcome };
}

/**
 * A line for each file that is written of a sample: its name and the SHA-256 of its bytes.
 * @param made  left out: as it comes.
 */
export async function hashesOf(name: string, made?: MadeSample): Promise<string[]> {
  const { pipeline, outcome } = made ?? (await (name === KIT ? madeKit() : madeSample(name)));
  const font = testFont();
  const sourceOf = pipeline.sourceOf.bind(pipeline);
  const files = expectOk(await writeFiles(outcome, { font, ...SAMPLE_RUN, sourceOf }));
  const shop = await writeShopFiles(outcome, { font, ...SAMPLE_RUN }, QUIET_WORK);
  const cutter = { kind: 'laser', cutWidthMm: 0.2 } as const;
  const machines = expectOk(
    machineFiles(outcome, { sheetSvg: true, dxf: true, cutter, models: { stl: true, obj: true } }, font),
  );
  return [...files, ...shop.files, ...machines]
    .map(([file, content]) => `${name} ${file} ${createHash('sha256').update(content).digest('hex')}`)
    .sort();
}
