import type { Bridges } from '../model/cutter.ts';
import { cutterOf, type MachineChoices } from '../pipeline/machine-files.ts';
import type { ModelChoice } from '../pipeline/machine-models.ts';
import { WrongUsage } from './exit.ts';
import { decimal, given, number, oneOf } from './option-values.ts';

/** Widest cut and bridge that are taken, mm; most bridges round a piece. */
const MOST_CUT_MM = 10;
const MOST_BRIDGE_MM = 50;
const MOST_BRIDGES = 100;

/** Dots to the inch: coarser shows no words, finer than any printer or screen. */
const LEAST_DPI = 10;
const MOST_DPI = 2400;

/** A prop of 2 m would be 2 mm high. */
const MOST_TIMES_SMALLER = 1000;

/** The options of files for machines as they were typed. */
export interface MachineWords {
  readonly dxf?: boolean;
  readonly 'svg-sheets'?: boolean;
  readonly png?: string;
  readonly stl?: boolean;
  readonly obj?: boolean;
  readonly smaller?: string;
  readonly cutter?: string;
  readonly 'cut-width'?: string;
  readonly bridges?: string;
}

/** @returns undefined where no such file is asked for. @throws WrongUsage */
export function machineFrom(words: MachineWords): MachineChoices | undefined {
  const kind = oneOf('cutter', words.cutter, ['blade', 'laser']);
  const cutWidthMm = number('cut-width', words['cut-width'], { least: 0, most: MOST_CUT_MM });
  const bridges = bridgesFrom(words.bridges);
  const isForCutter = words.dxf === true || words['svg-sheets'] === true;
  if (!isForCutter && (kind !== undefined || cutWidthMm !== undefined || bridges !== undefined))
    throw new WrongUsage(
      '--cutter, --cut-width and --bridges belong to files for a cutter: add --dxf or --svg-sheets.',
    );
  const pngDpi = number('png', words.png, { least: LEAST_DPI, most: MOST_DPI });
  const models = modelsFrom(words);
  if (!isForCutter && pngDpi === undefined && models === undefined) return undefined;
  return {
    dxf: words.dxf === true,
    sheetSvg: words['svg-sheets'] === true,
    ...given('pngDpi', pngDpi),
    ...given('models', models),
    cutter: cutterOf(kind ?? 'unknown', cutWidthMm, bridges),
  };
}

function modelsFrom({ stl = false, obj = false, smaller }: MachineWords): ModelChoice | undefined {
  const timesSmaller = number('smaller', smaller, { over: 1, most: MOST_TIMES_SMALLER });
  if (stl || obj) return { stl, obj, ...given('timesSmaller', timesSmaller) };
  if (timesSmaller !== undefined) throw new WrongUsage('--smaller belongs to a model of the prop: add --stl or --obj.');
  return undefined;
}

function bridgesFrom(word: string | undefined): Bridges | undefined {
  if (word === undefined) return undefined;
  const [count, widthMm, ...rest] = word.split(',').map(decimal);
  const isCount = Number.isInteger(count) && count >= 1 && count <= MOST_BRIDGES;
  if (!isCount || !(widthMm > 0 && widthMm <= MOST_BRIDGE_MM) || rest.length > 0)
    throw new WrongUsage(
      `--bridges takes how many hold each piece, up to ${MOST_BRIDGES}, and their width in mm, up to ${MOST_BRIDGE_MM}, as 4,2, not ${word === '' ? 'nothing' : word}.`,
    );
  return { count, widthMm };
}
