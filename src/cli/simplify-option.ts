import { needSculptAtWork } from '../project/at-work.ts';
import type { Work } from '../base/work.ts';
import type { Pipeline } from '../pipeline/pipeline.ts';
import { keepsOf } from '../pipeline/simplify-keeps.ts';
import type { Project, SimplifyChoice } from '../project/project.ts';
import { LEAST_TRIANGLES, setSimplify } from '../project/simplify-commands.ts';
import { WrongUsage } from './exit.ts';
import { decimal } from './option-values.ts';

/** What `--simplify` says; null takes the sculpt as it is. */
export type SimplifyOption = Omit<SimplifyChoice, 'keep'> | null;

/** Far beyond any sculpt, mm. */
const MOST_MM = 1e6;

/** `--simplify 5000`: triangles; `--simplify 0.4mm`: how far the surface may move; `off`: not at all. @throws WrongUsage */
export function simplifyFrom(word: string | undefined): SimplifyOption | undefined {
  if (word === undefined) return undefined;
  if (word === 'off') return null;
  const mm = /^(.+?)\s*mm$/.exec(word);
  const value = decimal((mm?.[1] ?? word).replace(',', '.'));
  if (mm !== null && value > 0 && value <= MOST_MM) return { deviationMm: value };
  if (mm === null && Number.isInteger(value) && value >= LEAST_TRIANGLES) return { triangles: value };
  throw new WrongUsage(
    `--simplify takes a number of triangles from ${LEAST_TRIANGLES} as 5000, how far the surface may move as 0.4mm, or off, not ${word === '' ? 'nothing' : word}.`,
  );
}

/** The project with its sculpt made simpler: what marks, areas and names stand on stays. */
export async function withSimplify(
  project: Project,
  option: SimplifyOption | undefined,
  pipeline: Pipeline,
  work: Work,
): Promise<Project> {
  if (option === undefined) return project;
  const bare = setSimplify(null).apply(project);
  if (option === null) return bare;
  const sculpt = await pipeline.sculptOf(bare, work);
  // What is wrong with it the run will tell.
  if (sculpt === null) return bare;
  return setSimplify({ ...option, keep: keepsOf(sculpt.mesh, needSculptAtWork(bare)) }).apply(bare);
}
