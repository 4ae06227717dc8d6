import { basename, extname } from 'node:path';
import { QUIET_WORK } from '../base/work.ts';
import type { Stack, StackLayer, StackRest } from '../model/stack.ts';
import { sheetCounts, stackJson, sum } from '../pipeline/stack-json.ts';
import { stackSectionsSvg, stackSvg } from '../pipeline/stack-svg.ts';
import { stackOfModel, stackOfProfile } from '../pipeline/stack.ts';
import { Refused } from './exit.ts';
import { writeAll } from './output-folder.ts';
import { checkFolder } from './output-place.ts';
import { readInput } from './read-input.ts';
import type { StackChoices } from './stack-options.ts';

/** Names of what is written. */
const FILES = { json: 'stack.json', layers: 'stack.svg', sections: 'stack-sections.svg' } as const;

/** `stack MODEL --sheets 10,6`: a solid as layers of sheet. @throws Refused @returns what is told. */
export async function stackCommand({ input, turned, scale, wish, out, json }: StackChoices): Promise<string> {
  if (out !== undefined) await checkFolder(out, Object.values(FILES), input === undefined ? [] : [input]);
  const [made, name] = await (async () => {
    if (input === undefined) return [stackOfProfile(turned ?? [], wish), 'turned profile'] as const;
    const file = await readInput(input);
    return [await stackOfModel(file.bytes, file.name, scale, wish, QUIET_WORK), file.name] as const;
  })();
  if (!made.ok) throw Refused.from(made.problem, name);
  const stack = made.value;
  const jsonText = `${JSON.stringify(stackJson(stack), null, 1)}\n`;
  if (out !== undefined) {
    const title = basename(name, extname(name));
    await writeAll(
      out,
      new Map([
        [FILES.json, jsonText],
        [FILES.layers, stackSvg(stack, title)],
        [FILES.sections, stackSectionsSvg(stack, title)],
      ]),
    );
  }
  return json ? jsonText : summary(stack, name, out);
}

function summary(stack: Stack, name: string, out: string | undefined): string {
  const { layers, heightMm, stackedMm, rule } = stack;
  const sheets = sheetCounts(layers)
    .map(({ thicknessMm, layers: count }) => `${count} of ${short(thicknessMm)} mm`)
    .join(', ');
  return [
    `${name}: ${layers.length} layers by the ${rule === 'middle' ? 'middle' : `${rule} face`}: ${sheets}; ${short(stackedMm)} mm for ${short(heightMm)} mm`,
    `solid ${cm3(stack.solidMm3)}, layers ${cm3(stack.stackedMm3)}, foam in them ${cm3(stack.foamMm3)}`,
    `to sand ${cm3(sum(layers.map(({ sand }) => sand.volumeMm3)))}, at most ${deepest(layers, 'sand')}; to fill ${cm3(sum(layers.map(({ fill }) => fill.volumeMm3)))}, at most ${deepest(layers, 'fill')}`,
    ...layers.map(layerText),
    ...stack.dowels.map(
      ({ fromLayer, toLayer, lengthMm, x, y }) =>
        `dowel ${short(lengthMm)} mm through layers ${fromLayer} to ${toLayer} at ${short(x)}, ${short(y)}`,
    ),
    ...stack.findings.map(({ severity, text }) => `${severity}: ${text}`),
    ...(out === undefined ? [] : [`${Object.values(FILES).join(', ')} written to ${out}`]),
    '',
  ].join('\n');
}

function layerText({ number, thicknessMm, fromMm, toMm, pieces, outlineAreaMm2, sand, fill }: StackLayer): string {
  const what = pieces.length === 0 ? 'nothing' : `${pieces.length} ${pieces.length === 1 ? 'piece' : 'pieces'}`;
  return `layer ${number}: ${short(thicknessMm)} mm, ${short(fromMm)} to ${short(toMm)}, ${what}, ${short(outlineAreaMm2 / 100)} cm²${restText('sand', sand)}${restText('fill', fill)}`;
}

const restText = (verb: string, { volumeMm3, depthMm }: StackRest): string =>
  volumeMm3 > 0.5 ? `, ${verb} ${cm3(volumeMm3)} to ${depthMm.toFixed(1)} mm deep` : '';

const deepest = (layers: readonly StackLayer[], kind: 'sand' | 'fill'): string =>
  `${Math.max(0, ...layers.map((layer) => layer[kind].depthMm + layer[kind].depthBoundMm)).toFixed(1)} mm deep`;

const short = (value: number): string => String(Number(value.toFixed(2)) + 0);
const cm3 = (mm3: number): string => `${(mm3 / 1000).toFixed(1)} cm³`;
