import type { FoamId } from '../base/ids.ts';
import type { ArtworkCraft } from '../model/artwork-craft.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import { pipeNamed } from '../pipeline/build-up.ts';
import type { NewPlain } from '../project/plain-commands.ts';
import type { PlainSource } from '../project/plain-part.ts';
import type { ListedPart } from '../project/parts-file.ts';
import type { PartCraft } from '../project/artwork-part.ts';
import { coreOptionsFrom } from './core-options.ts';
import { Refused, WrongUsage } from './exit.ts';
import { drawingOf } from './listed-drawing.ts';
import { engravingOf } from './listed-engraving.ts';
import { figureValues, RENAMED, type FigureValues } from './listed-figures.ts';
import { coversOf, strapOf, trimOf, type SculptOf } from './listed-trim.ts';
import { scaleFrom } from './scale-option.ts';
import { stackChoicesFrom } from './stack-options.ts';

/** What a part has beside the figures of its kind. */
export type PartBase = Pick<NewPlain, 'name' | 'transform' | 'copies' | 'mirrored' | 'foams'>;

/** A file that was read for a part. */
export interface PartFile {
  readonly source: PlainSource;
  readonly bytes: Uint8Array;
}

/** What a part is read with. */
export interface PartReading {
  readonly base: PartBase;
  /** Foams of the base, in its order. */
  readonly foams: readonly FoamSheet[];
  /** The sculpt that a text names; without one, the one that is worked on. @throws WrongUsage */
  readonly sculptOf: SculptOf;
  /** The foam that a text names. @throws WrongUsage */
  readonly foamOf: (text: string) => FoamId;
  /** Reads a file beside the parts file. @throws Refused */
  readonly fileOf: (path: string) => Promise<PartFile>;
}

/** A part that is no sculpt, as its kind has it. @throws WrongUsage, Refused */
export async function partOf(listed: ListedPart, reading: PartReading): Promise<NewPlain> {
  const { kind, shape, sizes = {}, file } = listed;
  if (!MADE_OF_FILES.includes(kind) && file !== undefined)
    throw new WrongUsage(`a part of the kind ${kind} is made of figures alone: leave --file out.`);
  switch (kind) {
    case 'sculpt':
      throw new Error('partOf: a sculpt');
    case 'shape': {
      const [stray] = Object.keys(listed.figures);
      if (stray !== undefined) throw new WrongUsage(`--${stray} is no field of a shape: its sizes stand in --sizes.`);
      if (shape === undefined) throw new WrongUsage('--shape is missing: a name that shape --list gives.');
      return { kind, ...reading.base, shape, sizes };
    }
    case 'stack':
      return await stackOf(listed, reading);
    case 'artwork':
      return await artworkOf(listed, reading);
    case 'build-up':
      return buildUpOf(listed, reading);
    case 'engraving':
      return await engravingOf(listed, reading);
    case 'trim':
      return trimOf(listed, reading.base, reading.sculptOf);
    case 'covers':
      return coversOf(listed, reading.base, reading.sculptOf);
    case 'strap':
      return strapOf(listed, reading.base);
  }
}

const MADE_OF_FILES: readonly ListedPart['kind'][] = ['stack', 'artwork', 'engraving'];

const thicknesses = (foams: readonly FoamSheet[]): string =>
  [...new Set(foams.map(({ thicknessMm }) => thicknessMm))].join(',');

async function stackOf(listed: ListedPart, { base, foams, fileOf }: PartReading): Promise<NewPlain> {
  const values = { ...figureValues(listed), sheets: thicknesses(foams) };
  const inputs = listed.file === undefined ? [] : [listed.file];
  const { input, turned, scale, wish } = stackChoicesFrom(inputs, values, scaleFrom(textsOf(values)));
  const { sheetsMm: _, ...rest } = wish;
  return {
    kind: 'stack',
    ...base,
    ...(input === undefined ? {} : { source: (await fileOf(input)).source }),
    ...(turned === undefined ? {} : { turned }),
    ...(scale === undefined ? {} : { scale }),
    wish: rest,
  };
}

async function artworkOf(listed: ListedPart, { base, fileOf }: PartReading): Promise<NewPlain> {
  const { 'also-mirrored': alsoMirrored, ...values } = figureValues(listed, RENAMED);
  const { source, drawing, craft } = await drawingOf(listed.file, values, fileOf);
  const asked: PartCraft = craft === undefined ? { kind: 'cut' } : withoutFoam(craft.craft);
  if (alsoMirrored !== undefined && asked.kind !== 'cut')
    throw new WrongUsage('--also-mirrored is for artwork that is cut out as it is.');
  return {
    kind: 'artwork',
    ...base,
    source,
    ...(craft?.other === undefined ? {} : { other: (await fileOf(craft.other)).source }),
    drawing,
    craft: alsoMirrored === true ? { kind: 'cut', isMirroredToo: true } : asked,
  };
}

/** Thickness and where it keeps its length are those of its foam. */
function withoutFoam(craft: ArtworkCraft): PartCraft {
  const { thicknessMm: _, neutralFraction: __, ...rest } = { thicknessMm: 0, neutralFraction: 0, ...craft };
  return rest;
}

function buildUpOf(listed: ListedPart, { base, foams, foamOf }: PartReading): NewPlain {
  const { wraps, ...figures } = listed.figures;
  const values = { ...figureValues({ figures }, RENAMED), sheets: thicknesses(foams) };
  const { wish, pipe } = coreOptionsFrom([], values);
  if (wish === undefined) throw new WrongUsage('--length and what is built up are missing.');
  const named = pipe === undefined ? null : pipeNamed(pipe);
  if (named?.ok === false) throw Refused.from(named.problem, listed.name);
  const { sheets: _, core, ...rest } = wish;
  return {
    kind: 'build-up',
    ...base,
    wish: {
      ...rest,
      core:
        named === null
          ? core
          : { ...core, pipe: named.value.name, diameterMm: named.value.outsideMm, material: named.value.material },
    },
    ...(wraps === undefined ? {} : { wraps: [wraps].flat().map((text) => foamOf(String(text))) }),
  };
}

const textsOf = (values: FigureValues): { readonly unit?: string; readonly size?: string } => ({
  ...(typeof values.unit === 'string' ? { unit: values.unit } : {}),
  ...(typeof values.size === 'string' ? { size: values.size } : {}),
});
