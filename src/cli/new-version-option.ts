import type { Finding } from '../base/finding.ts';
import { contentHash } from '../base/hash.ts';
import type { Work } from '../base/work.ts';
import type { Pipeline } from '../pipeline/pipeline.ts';
import { sourceFormat } from '../pipeline/source-format.ts';
import { needSculptAtWork } from '../project/at-work.ts';
import type { Project } from '../project/project.ts';
import { takeNewVersion } from '../project/version-commands.ts';
import { Refused } from './exit.ts';
import { readInput } from './read-input.ts';

/**
 * The project on a new version of its sculpt (`--new-version FILE`), and what could not be carried over; as it is where none is named.
 * @throws Refused where the file cannot be read or used.
 */
export async function onNewVersion(
  project: Project,
  path: string | undefined,
  pipeline: Pipeline,
  work: Work,
): Promise<{ readonly project: Project; readonly told: readonly Finding[] }> {
  if (path === undefined) return { project, told: [] };
  const { name: fileName, bytes } = await readInput(path);
  const format = sourceFormat(bytes, fileName);
  if (!format.ok) throw Refused.from(format.problem, fileName);
  const hash = await contentHash(bytes);
  pipeline.putSource(hash, { fileName, bytes });
  const part = needSculptAtWork(project);
  const carried = await pipeline.newVersion(part, { hash, fileName, format: format.value }, work, project.body);
  if (!carried.ok) throw Refused.from(carried.problem, fileName);
  return { project: takeNewVersion(carried.value.part).apply(project), told: carried.value.findings };
}
