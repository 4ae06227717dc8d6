import type { EngravingPlace } from '../project/engraving-part.ts';
import type { ListedPart } from '../project/parts-file.ts';
import type { NewPlain } from '../project/plain-commands.ts';
import { WrongUsage } from './exit.ts';
import { drawingOf } from './listed-drawing.ts';
import { figureValues, RENAMED } from './listed-figures.ts';
import type { PartReading } from './listed-part.ts';
import { decimal, given, oneOf } from './option-values.ts';

/** Artwork drawn on a sculpt. @throws WrongUsage, Refused */
export async function engravingOf(
  listed: ListedPart,
  { base, sculptOf, fileOf }: Pick<PartReading, 'base' | 'sculptOf' | 'fileOf'>,
): Promise<NewPlain> {
  const { on, at, corner, up, 'true-on': trueOn, ...values } = figureValues(listed, RENAMED);
  const { source, drawing, craft } = await drawingOf(listed.file, values, fileOf);
  if (craft !== undefined) throw new WrongUsage('an engraving is drawn as it is: nothing is cut of it.');
  const direction = up === undefined ? undefined : tripleOf('up', up);
  if (direction?.every((x) => x === 0) === true) throw new WrongUsage('--up takes a direction other than 0 0 0.');
  return {
    kind: 'engraving',
    ...base,
    on: sculptOf(textOf('on', on)),
    source,
    drawing,
    at: placeOf(at, corner),
    ...given('up', direction),
    trueOn: oneOf('true-on', textOf('true-on', trueOn), ['surface', 'piece']) ?? 'surface',
  };
}

type Figure = string | boolean | readonly string[] | undefined;

function placeOf(at: Figure, corner: Figure): EngravingPlace {
  if ((at === undefined) === (corner === undefined))
    throw new WrongUsage(
      '--at takes a point near the sculpt, three numbers of mm; --corner a corner of it by its number in the file: give one of the two.',
    );
  if (at !== undefined) return { by: 'nearest', mm: tripleOf('at', at) };
  const vertex = Number(textOf('corner', corner));
  if (!Number.isInteger(vertex) || vertex < 0)
    throw new WrongUsage('--corner takes a corner of the sculpt by its number in the file, from 0.');
  return { by: 'point', point: { vertex } };
}

function tripleOf(name: string, figure: Figure): readonly [number, number, number] {
  const [x, y, z, ...more] = (textOf(name, figure) ?? '').split(',').map(decimal);
  if (more.length > 0 || ![x, y, z].every(Number.isFinite)) throw new WrongUsage(`--${name} takes three numbers.`);
  return [x, y, z];
}

function textOf(name: string, figure: Figure): string | undefined {
  if (figure === undefined || typeof figure === 'string') return figure;
  throw new WrongUsage(`--${name} is a text, a number or a row of numbers.`);
}
