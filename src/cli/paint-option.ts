import { needSculptAtWork } from '../project/at-work.ts';
import type { Work } from '../base/work.ts';
import type { Colour } from '../model/colours.ts';
import type { Region } from '../model/flatten-settings.ts';
import { facesOfNamedGroup } from '../pipeline/group-faces.ts';
import type { Pipeline } from '../pipeline/pipeline.ts';
import { CLAY_MOST_MM } from '../project/clay-limits.ts';
import { KNOWN_COATS } from '../project/coats.ts';
import { COLOURS_AT_MOST, KNOWN_COLOUR_KINDS } from '../project/colour-kinds.ts';
import { addRegion } from '../project/commands.ts';
import {
  addColour,
  clayRegion,
  colourRegion,
  newColour,
  setBaseColour,
  setColour,
  type ColourFields,
} from '../project/finish-commands.ts';
import { isSameName } from '../project/finish-schema.ts';
import { setCoatings } from '../project/shop-commands.ts';
import type { Project } from '../project/project.ts';
import { Refused, WrongUsage } from './exit.ts';
import { decimal, given } from './option-values.ts';

/** What is said of colours and of shapes in clay. */
export interface PaintOption {
  /** Ids of coats that go all over, in their order; none: it stays bare. */
  readonly coats?: readonly string[];
  readonly colours?: readonly Partial<ColourFields>[];
  /** An area by its name, or `rest`; the colour by its name, or none. */
  readonly paints?: readonly { readonly area: string; readonly colour: string | null }[];
  /** 0: none. */
  readonly shapes?: readonly { readonly area: string; readonly heightMm: number }[];
}

/** What stands for all that no area says otherwise of, and for no colour. */
const REST = 'rest';
const NONE = 'none';

/** `--coats`, and `--colour`, `--paint` and `--clay` as often as wanted; nothing where none is. @throws WrongUsage */
export function paintFrom(values: {
  readonly coats?: string | undefined;
  readonly colour?: string[] | undefined;
  readonly paint?: string[] | undefined;
  readonly clay?: string[] | undefined;
}): PaintOption | undefined {
  const { coats, colour, paint, clay } = values;
  if (coats === undefined && colour === undefined && paint === undefined && clay === undefined) return undefined;
  return {
    ...given('coats', coats === undefined ? undefined : coatsFrom(coats)),
    ...given('colours', colour?.map(colourFrom)),
    ...given('paints', paint?.map(areaPaint)),
    ...given('shapes', clay?.map(shapeFrom)),
  };
}

/** `sealer,primer`, or `none`. */
function coatsFrom(word: string): readonly string[] {
  const names = word === NONE ? [] : word.split(',').map((name) => name.trim());
  const known = KNOWN_COATS.map(({ id }) => id);
  if (names.some((name, i) => !known.includes(name) || names.indexOf(name) !== i))
    throw new WrongUsage(
      `--coats takes ${known.join(', ')}, each once and in the order they go on, or ${NONE}, not ${word === '' ? 'nothing' : word}.`,
    );
  return names;
}

/** Parts before and after the last sign: a name may hold one. */
function parted(word: string): readonly [string, string] {
  const at = word.lastIndexOf('=');
  return [word.slice(0, Math.max(at, 0)).trim(), word.slice(at + 1).trim()];
}

function colourFrom(word: string): Partial<ColourFields> {
  const [name, said] = parted(word);
  const [rgb, ...rest] = said.toLowerCase().split(',');
  const kind = KNOWN_COLOUR_KINDS.find(({ id }) => id === rest[0]);
  const [coats, m2, ...more] = (kind === undefined ? rest : rest.slice(1)).map(decimal);
  const isColour = name !== '' && name !== REST && name !== NONE && /^#[0-9a-f]{6}$/.test(rgb);
  const areFigures =
    more.length === 0 &&
    (coats === undefined || (Number.isInteger(coats) && coats >= 1 && coats <= 50)) &&
    (m2 === undefined || (m2 > 0 && m2 <= 100));
  if (!isColour || !areFigures)
    throw new WrongUsage(
      `--colour looks like Brass=#b58a3c, or Brass=#b58a3c,sprayed,3,4.5: a name, the colour, ${KNOWN_COLOUR_KINDS.map(({ id }) => id).join(' or ')}, how many coats, and how many m2 of one coat a litre covers by its label.`,
    );
  const { id: _, ...usual } = kind ?? KNOWN_COLOUR_KINDS[0];
  return {
    name,
    rgb,
    ...(kind === undefined ? {} : { ...usual, figures: 'usual' as const }),
    ...given('coats', coats),
    ...(m2 === undefined ? {} : { coverageM2PerL: m2, figures: 'label' as const }),
  };
}

function areaPaint(word: string): { area: string; colour: string | null } {
  const [area, colour] = parted(word);
  if (area === '' || colour === '')
    throw new WrongUsage(
      `--paint looks like visor=Brass: an area of the project or a group of the file by its name, or ${REST} for all else, and a colour by its name, or ${NONE}.`,
    );
  return { area, colour: colour === NONE ? null : colour };
}

function shapeFrom(word: string): { area: string; heightMm: number } {
  const [area, size] = parted(word);
  const heightMm = decimal(size.replace(',', '.'));
  if (area === '' || !(heightMm >= 0 && heightMm <= CLAY_MOST_MM))
    throw new WrongUsage(
      `--clay looks like crest=8: an area of the project or a group of the file by its name, and how high it is built up in mm, at most ${CLAY_MOST_MM}; 0 for none.`,
    );
  return { area, heightMm };
}

/**
 * The project with what was said; a group of the file becomes an area where none has its name.
 * @throws WrongUsage where neither has. Refused where a colour is not in the list, or the list is full.
 */
export async function withPaint(
  project: Project,
  option: PaintOption | undefined,
  pipeline: Pipeline,
  work: Work,
): Promise<Project> {
  const { coats, colours = [], paints = [], shapes = [] } = option ?? {};
  let said = project;
  if (coats !== undefined)
    said = setCoatings(coats.flatMap((name) => KNOWN_COATS.find(({ id }) => id === name) ?? [])).apply(said);
  for (const colour of colours) said = withColour(said, colour);
  for (const { area, colour } of paints) {
    const own = colour === null ? null : colourNamed(said, colour, `--paint ${area}=${colour}`);
    if (area === REST) {
      said = setBaseColour(own).apply(said);
      continue;
    }
    const found = await withArea(said, area, `--paint ${area}=${colour ?? NONE}`, pipeline, work);
    said = colourRegion(found.region.id, own).apply(found.project);
  }
  for (const { area, heightMm } of shapes) {
    const found = await withArea(said, area, `--clay ${area}=${heightMm}`, pipeline, work);
    said = clayRegion(found.region.id, heightMm === 0 ? null : heightMm).apply(found.project);
  }
  return said;
}

/** A colour of the list changes where there is one of that name, and else joins it. */
function withColour(project: Project, fields: Partial<ColourFields>): Project {
  const { name = '', rgb = '' } = fields;
  const known = coloursOf(project).find((colour) => isSameName(colour.name, name));
  if (known !== undefined) return setColour(known.id, { figures: known.figures, ...fields }).apply(project);
  const added = addColour({ ...newColour(name, rgb), ...fields }).apply(project);
  if (added === project) throw new Refused(`--colour ${name}: a project holds ${COLOURS_AT_MOST} colours at most.`);
  return added;
}

const coloursOf = ({ shop }: Project): readonly Colour[] => shop?.colours ?? [];

function colourNamed(project: Project, name: string, option: string): string {
  const colours = coloursOf(project);
  const found = colours.find((colour) => isSameName(colour.name, name));
  if (found !== undefined) return found.id;
  const known =
    colours.length === 0
      ? `say what it is with --colour ${name}=#rrggbb`
      : `the project has ${colours.map((colour) => colour.name).join(', ')}`;
  throw new Refused(`${option}: there is no colour ${name}; ${known}.`);
}

/** An area by its name; a group of the file becomes one where none is so called. @throws WrongUsage where neither has that name. */
export async function withArea(
  project: Project,
  name: string,
  option: string,
  pipeline: Pipeline,
  work: Work,
): Promise<{ readonly project: Project; readonly region: Region }> {
  const { regions } = needSculptAtWork(project);
  const known = regions.find((region) => region.name === name);
  if (known !== undefined) return { project, region: known };
  const sculpt = await pipeline.sculptOf(project, work);
  const faces = sculpt === null ? [] : facesOfNamedGroup(sculpt, name);
  const marked = addRegion(name, faces, 'normal').apply(project);
  const region = needSculptAtWork(marked).regions.at(-1);
  if (faces.length > 0 && region !== undefined) return { project: marked, region };
  const names = [...regions.map((own) => own.name), ...(sculpt?.mesh.groupNames ?? [])];
  throw new WrongUsage(
    `${option}: ${names.length === 0 ? 'the sculpt has neither areas nor groups.' : `the sculpt has ${names.join(', ')}.`}`,
  );
}
