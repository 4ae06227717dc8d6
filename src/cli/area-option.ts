import { needSculptAtWork } from '../project/at-work.ts';
import type { Work } from '../base/work.ts';
import type { Give, SeamPaint } from '../model/flatten-settings.ts';
import { facesOfNamedGroup } from '../pipeline/group-faces.ts';
import type { Pipeline } from '../pipeline/pipeline.ts';
import { addRegion, setRegionGive, setRegionSeams, type Command } from '../project/commands.ts';
import type { Project } from '../project/project.ts';
import { WrongUsage } from './exit.ts';

const WORDS = ['clear', 'prefer', 'stiff', 'soft', 'normal'] as const;

/** What is said of an area of the project or of a group of the file, by its name. */
export interface AreaChoice {
  readonly name: string;
  readonly word: (typeof WORDS)[number];
}

/** `--area NAME=WORD`, as often as wanted. @throws WrongUsage */
export function areasFrom(words: readonly string[] | undefined): readonly AreaChoice[] | undefined {
  return words?.map((given) => {
    // A name may hold the sign.
    const at = given.lastIndexOf('=');
    const name = given.slice(0, Math.max(at, 0)).trim();
    const word = WORDS.find((known) => known === given.slice(at + 1));
    if (name === '' || word === undefined)
      throw new WrongUsage(
        `--area looks like visor=clear: an area of the project or a group of the file by its name, and ${WORDS.join(', ')}.`,
      );
    return { name, word };
  });
}

/**
 * The project with what was said of its areas; a group of the file becomes one where no area has its name.
 * @throws WrongUsage where neither has.
 */
export async function withAreas(
  project: Project,
  choices: readonly AreaChoice[] | undefined,
  pipeline: Pipeline,
  work: Work,
): Promise<Project> {
  let said = project;
  for (const choice of choices ?? []) said = (await commandFor(said, choice, pipeline, work)).apply(said);
  return said;
}

async function commandFor(project: Project, choice: AreaChoice, pipeline: Pipeline, work: Work): Promise<Command> {
  const { name, word } = choice;
  const { regions } = needSculptAtWork(project);
  const seams: SeamPaint | undefined = word === 'clear' || word === 'prefer' ? word : undefined;
  const give: Give | undefined = word === 'clear' || word === 'prefer' ? undefined : word;
  const area = regions.find((region) => region.name === name);
  if (area !== undefined)
    return give === undefined ? setRegionSeams(area.id, seams ?? null) : setRegionGive(area.id, give);
  const sculpt = await pipeline.sculptOf(project, work);
  const faces = sculpt === null ? [] : facesOfNamedGroup(sculpt, name);
  if (faces.length > 0) return addRegion(name, faces, give ?? 'normal', seams);
  const known = [...regions.map((region) => region.name), ...(sculpt?.mesh.groupNames ?? [])];
  throw new WrongUsage(
    `--area ${name}=${word}: ${known.length === 0 ? 'the sculpt has neither areas nor groups.' : `the sculpt has ${known.join(', ')}.`}`,
  );
}
