import { Refused } from '../src/cli/exit.ts';
import { withParts } from '../src/cli/parts-option.ts';
import { emptyProject } from '../src/project/new-project.ts';
import { writeProjectFile } from '../src/project/project-file.ts';

/** The whole props as a parts file tells of them, and the project that they are in the window. */
export const KIT_FILES = { parts: 'samples/kit.parts.json', project: 'kit.foamloft.json' } as const;

/** The project of the whole props with its files, as text; the models must have been written. @throws Refused */
export async function kitProjectText(): Promise<string> {
  const { project, name, sources } = await withParts(emptyProject('kit'), KIT_FILES.parts);
  if (name === undefined) throw new Refused(`${KIT_FILES.parts} does not say what the props are called.`);
  return writeProjectFile({ ...project, name }, sources);
}
