import type { Shape, ShapeMeasure } from '../model/shape.ts';
import type { SizeField } from '../model/shape-size.ts';
import { shapeFiles } from '../pipeline/shape-files.ts';
import { kindJson, shapeJson } from '../pipeline/shape-json.ts';
import { ALL_SHAPES, findShape, shapeFrom } from '../pipeline/shapes.ts';
import { Refused } from './exit.ts';
import { writeAll } from './output-folder.ts';
import { checkFolder } from './output-place.ts';
import type { ShapeChoices } from './shape-options.ts';

/** `shape NAME size=value …` and `shape --list`. @throws Refused where the name or a size is at fault. */
export function shapeCommand({ shape: name, sizes, list, json }: ShapeChoices): string {
  if (name === undefined) return json ? jsonText(ALL_SHAPES.map(kindJson)) : ALL_SHAPES.map(kindText).join('\n');
  const kind = findShape(name);
  if (!kind.ok) throw new Refused(kind.problem.text);
  if (list) return json ? jsonText(kindJson(kind.value)) : kindText(kind.value);
  const made = shapeFrom(name, sizes);
  if (!made.ok) throw new Refused(made.problem.text);
  return json ? jsonText(shapeJson(made.value, kind.value)) : shapeText(made.value);
}

/** `shape NAME … --out FOLDER`: its pieces as SVG and DXF beside what is told. @throws Refused where nothing can be drawn or written. @returns what is told, and the names of the files. */
export async function writtenShape(choices: ShapeChoices, folder: string): Promise<string> {
  const told = shapeCommand(choices);
  const made = shapeFrom(choices.shape ?? '', choices.sizes);
  if (!made.ok) throw new Refused(made.problem.text);
  const files = shapeFiles(made.value);
  if (!files.ok) throw new Refused(files.problem.text);
  await checkFolder(folder, [...files.value.keys()], []);
  await writeAll(folder, files.value);
  return choices.json ? told : `${told}${[...files.value.keys()].join(', ')} written to ${folder}\n`;
}

/** A kind of shape in one sentence, its other names, and a line for each size. */
function kindText({ name, also, says, sizes }: (typeof ALL_SHAPES)[number]): string {
  const others = also === undefined ? '' : ` Also called ${also.join(', ')}.`;
  return [`${name}: ${says}${others}`, ...sizes.map((field) => `  ${fieldText(field)}`), ''].join('\n');
}

const jsonText = (value: unknown): string => `${JSON.stringify(value, null, 1)}\n`;

/** One size on one line: name, unit, default or choices, limits, meaning, other names. */
function fieldText(field: SizeField): string {
  const { name, means, kind, unit, choices, default: first, isList, also } = field;
  const what =
    choices === undefined
      ? `${kind}${unit === '' ? '' : ` in ${unit}`}${isList === true ? ', several' : ''}`
      : choices.join('|');
  const given =
    first === undefined ? 'no default' : `default ${typeof first === 'object' ? first.join(',') : String(first)}`;
  const others = also === undefined ? '' : `; also ${also.map((one) => one.name).join(', ')}`;
  return `${name} (${what}; ${[given, ...limitsText(field)].join('; ')}): ${means}${others}`;
}

const limitsText = ({ least, over, most }: SizeField): string[] =>
  [
    over === undefined ? null : `over ${over}`,
    least === undefined ? null : `at least ${least}`,
    most === undefined ? null : `at most ${most}`,
  ].filter((one) => one !== null);

const figure = (value: number): string => String(Number(value.toPrecision(9)));

function measureText({ name, value, unit, of }: ShapeMeasure): string {
  const shown = typeof value === 'number' ? figure(value) : value.map(figure).join(', ');
  return `${of === undefined ? '' : `${of} `}${name} ${shown}${unit === '' ? '' : ` ${unit}`}`;
}

function shapeText({ name, sizes, measures, pieces, seams, warnings }: Shape): string {
  const given = Object.entries(sizes).map(
    ([size, value]) => `${size}=${typeof value === 'object' ? value.join(',') : String(value)}`,
  );
  return [
    [name, ...given].join(' '),
    ...measures.map((one) => `  ${measureText(one)}`),
    ...pieces.map(
      (one) =>
        `piece ${one.name}, ${one.quantity} of it, ${figure(one.areaMm2)} mm²: ${one.outline.map((side) => `${side.name} ${figure(side.lengthMm)} mm`).join(', ')}`,
    ),
    ...seams.map(
      (seam) =>
        `seam ${seam.name}: ${seam.pieces[0]} ${seam.edges[0]} ${figure(seam.lengthMm[0])} mm, ${seam.pieces[1]} ${seam.edges[1]} ${figure(seam.lengthMm[1])} mm`,
    ),
    ...warnings.map(({ text }) => `warning: ${text}`),
    '',
  ].join('\n');
}
