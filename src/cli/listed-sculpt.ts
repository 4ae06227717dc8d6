import type { FoamSheet } from '../model/foam-stock.ts';
import type { PartStanding } from '../pipeline/plain/placed-part.ts';
import { sourceFormat } from '../pipeline/source-format.ts';
import { freeLayerId } from '../project/layer-commands.ts';
import type { ListedPart } from '../project/parts-file.ts';
import { MOST_LAYERS } from '../project/project-file.ts';
import type { LayerChoice, Project, SculptPart } from '../project/project.ts';
import { addSculpt } from '../project/sculpt-commands.ts';
import { Refused, WrongUsage } from './exit.ts';
import { figureValues } from './listed-figures.ts';
import type { PartFile } from './listed-part.ts';
import { seamsOn } from './open-input.ts';
import type { InputFile } from './read-input.ts';
import { scaleFrom } from './scale-option.ts';
import { sculptWishesFrom, wishedOf } from './sculpt-wishes.ts';

/** What a sculpt is read with. */
export interface SculptReading {
  readonly standing: PartStanding;
  /** Of its wall from the inside outward, one or more. */
  readonly foams: readonly FoamSheet[];
  /** Reads a file beside the parts file that the project keeps. @throws Refused */
  readonly fileOf: (path: string) => Promise<PartFile>;
  /** Reads one that it does not keep. @throws Refused */
  readonly inputOf: (path: string) => Promise<InputFile>;
}

const FIELDS = ['seams', 'unit', 'size', 'model-is', 'neutral', 'off', 'traced', 'up'] as const;

/** The project with a sculpt; one of its name gives up its place and its id. What is worked on stays at work. @throws WrongUsage, Refused */
export async function withListedSculpt(project: Project, listed: ListedPart, reading: SculptReading): Promise<Project> {
  const { standing, foams, fileOf, inputOf } = reading;
  const values = textsOf(listed);
  const scale = scaleFrom(values);
  if (scale === undefined)
    throw new WrongUsage('--unit is missing: mm, cm, m or in, the unit of its numbers; or --size as longest=320.');
  if (listed.file === undefined) throw new WrongUsage('--file is missing: the model it is sculpted as.');
  if (standing.mirrored !== undefined)
    throw new WrongUsage(
      'a sculpt has no mirrored copies: make one in the sculpting program and list it under a name of its own.',
    );
  if (foams.length > MOST_LAYERS) throw new WrongUsage(`--foam: a wall has at most ${MOST_LAYERS} sheets.`);
  const { source, bytes } = await fileOf(listed.file);
  const format = sourceFormat(bytes, source.fileName);
  if (!format.ok) throw Refused.from(format.problem, source.fileName);
  const model = { ...source, format: format.value };
  const seams = values.seams === undefined ? {} : seamsOn(await inputOf(values.seams), model);
  const old = project.parts.find(({ name }) => name === listed.name);
  const added = addSculpt(listed.name, model).apply({
    ...project,
    parts: project.parts.filter((part) => part !== old),
  });
  const [begun] = added.parts.slice(-1);
  const wishes = sculptWishesFrom(values);
  const sculpt: SculptPart = {
    ...begun,
    id: old?.id ?? begun.id,
    transform: standing.transform,
    copies: standing.copies,
    scale,
    ...seams,
    ...wishedOf(begun, wishes),
    layers: sheetsOf(foams, wishes.neutral),
  };
  return {
    ...project,
    parts: old === undefined ? [...project.parts, sculpt] : project.parts.map((part) => (part === old ? sculpt : part)),
  };
}

function sheetsOf(foams: readonly FoamSheet[], neutral: number | undefined): readonly LayerChoice[] {
  const sheets: LayerChoice[] = [];
  for (const { id, thicknessMm, neutralFraction } of foams)
    sheets.push({
      id: freeLayerId(sheets),
      foam: id,
      thicknessMm,
      neutralFraction: neutral ?? neutralFraction,
      allowForShrinkage: false,
    });
  return sheets;
}

/** Its figures as texts. @throws WrongUsage for one that no sculpt has. */
function textsOf({ figures }: ListedPart): Readonly<Partial<Record<(typeof FIELDS)[number], string>>> {
  const { neutral, ...others } = figures;
  const values = {
    ...figureValues({ figures: others }),
    ...(neutral === undefined ? {} : { neutral: String(neutral) }),
  };
  const texts: Partial<Record<(typeof FIELDS)[number], string>> = {};
  for (const [name, value] of Object.entries(values)) {
    const field = FIELDS.find((one) => one === name);
    if (field === undefined) throw new WrongUsage(`--${name} is no field of a part of the kind sculpt.`);
    if (typeof value !== 'string') throw new WrongUsage(`--${name} is a text or a number.`);
    texts[field] = value;
  }
  return texts;
}
