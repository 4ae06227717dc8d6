import { dirname, resolve } from 'node:path';
import { parseLength } from '../base/format-length.ts';
import { contentHash } from '../base/hash.ts';
import type { FoamId, PartId } from '../base/ids.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { Outcome } from '../pipeline/outcome.ts';
import { foamForThickness } from '../pipeline/plain/foam-for-thickness.ts';
import { standingOf } from '../pipeline/plain/placed-part.ts';
import type { Source } from '../pipeline/sculpt-stage.ts';
import { firstFoam } from '../project/new-project.ts';
import { withListedJoins } from '../project/joins-listed.ts';
import { readPartsFile, type ListedPart } from '../project/parts-file.ts';
import { sculptAtWork } from '../project/at-work.ts';
import { addPlain } from '../project/plain-commands.ts';
import type { Project } from '../project/project.ts';
import { Refused, WrongUsage } from './exit.ts';
import { aboutFields, RENAMED } from './listed-figures.ts';
import { withListedInserts } from './listed-inserts.ts';
import { partOf, type PartFile } from './listed-part.ts';
import { withListedSculpt, type SculptReading } from './listed-sculpt.ts';
import { readInput, type InputFile } from './read-input.ts';

/** A project with parts of a file, and what they are made from. */
export interface WithParts {
  readonly project: Project;
  /** What the file calls the prop. */
  readonly name?: string;
  readonly sources: ReadonlyMap<string, Source>;
  /** Files that were read. */
  readonly inputs: readonly string[];
}

/** `--parts FILE.json`: adds its parts; one of a name that is there takes its place. @throws Refused */
export async function withParts(project: Project, path: string): Promise<WithParts> {
  const { name: fileName, bytes } = await readInput(path);
  const read = readPartsFile(new TextDecoder().decode(bytes), fileName);
  if (!read.ok) throw Refused.from(read.problem, fileName);
  const sources = new Map<string, Source>();
  const inputs = [path];
  const inputOf = async (named: string): Promise<InputFile> => {
    const file = await readInput(resolve(dirname(path), named));
    inputs.push(file.path);
    return file;
  };
  const fileOf = async (named: string): Promise<PartFile> => {
    const file = await inputOf(named);
    const hash = await contentHash(file.bytes);
    sources.set(hash, { fileName: file.name, bytes: file.bytes });
    return { source: { hash, fileName: file.name }, bytes: file.bytes };
  };
  let made = project;
  const { name, parts, inserts = [], joins = [] } = read.value;
  for (const listed of parts) {
    try {
      made = await added(made, listed, { fileOf, inputOf });
    } catch (error) {
      if (!(error instanceof WrongUsage)) throw error;
      throw new Refused(`${fileName}, ${listed.name}: ${aboutFields(error.message, RENAMED)}`);
    }
  }
  try {
    made = withListedInserts(made, inserts, (text) => namedFoam(project.foams, text));
  } catch (error) {
    if (!(error instanceof WrongUsage)) throw error;
    throw new Refused(`${fileName}: ${aboutFields(error.message, RENAMED)}`);
  }
  const whole = withListedJoins(made, joins);
  if (!whole.ok) throw Refused.from(whole.problem, fileName);
  return { project: whole.value, ...(name === undefined ? {} : { name }), sources, inputs };
}

async function added(
  project: Project,
  listed: ListedPart,
  files: Pick<SculptReading, 'fileOf' | 'inputOf'>,
): Promise<Project> {
  if (listed.kind !== 'shape' && (listed.shape !== undefined || listed.sizes !== undefined))
    throw new WrongUsage('--shape and --sizes belong to a part of the kind shape.');
  const foamOf = (text: string): FoamId => namedFoam(project.foams, text);
  const ids = listed.foam?.map(foamOf) ?? [firstFoam(project.foams).id];
  const foams = ids.flatMap((id) => project.foams.filter((foam) => foam.id === id));
  const standing = standingOf(listed.place ?? {}, listed.copies);
  if (!standing.ok) throw new WrongUsage(standing.problem.text);
  if (listed.kind === 'sculpt')
    return await withListedSculpt(project, listed, { standing: standing.value, foams, ...files });
  const base = { name: listed.name, ...standing.value, foams: ids };
  const part = await partOf(listed, {
    base,
    foams,
    foamOf,
    fileOf: files.fileOf,
    sculptOf: (text) => sculptNamed(project, text),
  });
  const old = project.plain?.find(({ name }) => name === listed.name);
  if (old === undefined) return addPlain(part).apply(project);
  return { ...project, plain: project.plain?.map((one) => (one === old ? { ...part, id: old.id } : one)) ?? [] };
}

/** A sculpt by its name or id; without one, the one that is worked on. @throws WrongUsage */
function sculptNamed(project: Project, text: string | undefined): PartId {
  const { parts } = project;
  const found = text === undefined ? sculptAtWork(project) : parts.find(({ id, name }) => id === text || name === text);
  if (found != null) return found.id;
  const known =
    parts.length === 0 ? 'and the project has none' : `the project has ${parts.map(({ name }) => name).join(', ')}`;
  throw new WrongUsage(`--on names a sculpt of the project, ${known}.`);
}

/** A foam by its thickness, its name or its id. @throws WrongUsage */
function namedFoam(foams: readonly FoamSheet[], text: string): FoamId {
  const mm = parseLength(text, 'mm');
  const found =
    foams.find(({ id, name }) => id === text || name.toLowerCase() === text.toLowerCase())?.id ??
    (mm === null ? null : foamForThickness(foams, mm));
  if (found !== null) return found;
  const known = [...new Set(foams.map(({ thicknessMm }) => `${thicknessMm} mm`))].join(', ');
  throw new WrongUsage(`--foam ${text} is none of the project's: take ${known}, or one by its name.`);
}

/** A line for each part that no sculpt is parted for, with its pieces. */
export const partLines = ({ plain }: Pick<Outcome, 'plain'>): readonly string[] =>
  plain.map(({ part, work, pieces }) => {
    const head = `${part.name} (${part.kind}${part.copies > 1 ? `, ${part.copies} of it` : ''})`;
    if (work === null) return `${head}: not made`;
    const all = pieces.reduce((sum, { quantity }) => sum + quantity, 0);
    const numbers = pieces.length === 0 ? '' : `, ${numbersOf(pieces.map(({ number }) => number))}`;
    return `${head}: ${pieces.length} ${pieces.length === 1 ? 'template' : 'templates'}${numbers}, ${all} to cut`;
  });

const numbersOf = (numbers: readonly number[]): string =>
  numbers.length === 1 ? `number ${numbers[0]}` : `numbers ${numbers[0]} to ${numbers[numbers.length - 1]}`;
