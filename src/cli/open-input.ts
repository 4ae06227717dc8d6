import { needSculptAtWork, sculptAtWork } from '../project/at-work.ts';
import type { Finding } from '../base/finding.ts';
import { contentHash } from '../base/hash.ts';
import type { ScaleChoice } from '../model/source-model.ts';
import type { Source } from '../pipeline/sculpt-stage.ts';
import { sourceFormat } from '../pipeline/source-format.ts';
import { nameFromFile, newProject } from '../project/new-project.ts';
import { looksLikeProject, readProjectFile } from '../project/project-file.ts';
import type { Project, SculptPart, SourceRef } from '../project/project.ts';
import { readSeamFile } from '../project/seam-file.ts';
import { Refused } from './exit.ts';
import { readInput, type InputFile } from './read-input.ts';

/** A model or a project as the command line names it. */
export interface OpenedInput {
  readonly project: Project;
  /** Files the project is made of, by the SHA-256 of their bytes. */
  readonly sources: ReadonlyMap<string, Source>;
  /** What had to be assumed. */
  readonly assumed: readonly Finding[];
}

/**
 * Opens a model as a new project, or a project as it was left.
 * @param scale  left out, a model's numbers are taken as mm, which is told.
 * @throws Refused
 */
export async function openInput(file: InputFile, scale: ScaleChoice | undefined): Promise<OpenedInput> {
  if (looksLikeProject(file.bytes)) {
    const opened = await readProjectFile(new TextDecoder().decode(file.bytes), file.name);
    if (!opened.ok) throw Refused.from(opened.problem, file.name);
    return { ...opened.value, assumed: opened.notes };
  }
  const hash = await contentHash(file.bytes);
  const sources = new Map([[hash, { fileName: file.name, bytes: file.bytes }]]);
  const format = sourceFormat(file.bytes, file.name);
  if (!format.ok) throw Refused.from(format.problem, file.name);
  const project = newProject(nameFromFile(file.name), { hash, fileName: file.name, format: format.value });
  if (scale !== undefined) return { project, sources, assumed: [] };
  return {
    project: changePart(project, { scale: { by: 'unit', unit: 'mm' } }),
    sources,
    assumed: [
      {
        code: 'size/assumed',
        severity: 'warning',
        text: 'The file does not say its unit, so its numbers were taken as millimetres: give --unit or --size if that is not so.',
        where: {},
      },
    ],
  };
}

/** What a seam file changes of a part. @throws Refused where it cannot be read or was drawn on another model. */
export async function seamsFrom(path: string, project: Project): Promise<Partial<SculptPart>> {
  return seamsOn(await readInput(path), needSculptAtWork(project).source);
}

/** The same of a file that was read, for a model. */
export function seamsOn(file: InputFile, source: SourceRef): Partial<SculptPart> {
  const read = readSeamFile(new TextDecoder().decode(file.bytes), file.name);
  if (!read.ok) throw Refused.from(read.problem, file.name);
  const { modelHash, marks, joins } = read.value;
  if (modelHash !== null && modelHash !== source.hash) {
    throw new Refused(
      `${file.name}: its seams were drawn on another version of ${source.fileName}; take "modelHash" out of the file to use them all the same.`,
    );
  }
  return { seams: marks, ...(joins.length === 0 ? {} : { seamSettings: joins }) };
}

/** A project whose sculpt at work differs by this. */
export const changePart = (project: Project, change: Partial<SculptPart>): Project => {
  const atWork = sculptAtWork(project);
  return { ...project, parts: project.parts.map((part) => (part === atWork ? { ...part, ...change } : part)) };
};
