import type { Bridges, CutterWish } from '../model/cutter.ts';
import { cutterOfProject, type MachineChoices } from '../pipeline/machine-files.ts';
import type { ModelChoice } from '../pipeline/machine-models.ts';
import { areBridges, CUTTER_LIMITS, setBridges, setCutter, setCutWidth } from '../project/cutter-commands.ts';
import type { Project } from '../project/project.ts';
import { WrongUsage } from './exit.ts';
import { decimal, given, number, oneOf } from './option-values.ts';

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

/** Files for machines that were asked for, and what was said of the cutter beside what the project says. */
export interface MachineOption extends Omit<MachineChoices, 'cutter'> {
  readonly cutter: CutterWish;
}

/** @returns undefined where no such file is asked for. @throws WrongUsage */
export function machineFrom(words: MachineWords): MachineOption | undefined {
  const kind = oneOf('cutter', words.cutter, ['blade', 'laser']);
  const cutWidthMm = number('cut-width', words['cut-width'], CUTTER_LIMITS.cutWidthMm);
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
    cutter: { ...given('kind', kind), ...given('cutWidthMm', cutWidthMm), ...given('bridges', bridges) },
  };
}

/** The project with what was said of the cutter. */
export function withCutter(project: Project, option: MachineOption | undefined): Project {
  const { kind, cutWidthMm, bridges } = option?.cutter ?? {};
  const commands = [
    ...(kind === undefined ? [] : [setCutter(kind)]),
    ...(cutWidthMm === undefined ? [] : [setCutWidth(cutWidthMm)]),
    ...(bridges === undefined ? [] : [setBridges(bridges)]),
  ];
  return commands.reduce((changed, command) => command.apply(changed), project);
}

/** What is to be made, by the cutter of the project. */
export const machineChoices = (option: MachineOption | undefined, project: Project): MachineChoices | undefined =>
  option && { ...option, cutter: cutterOfProject(project) };

function modelsFrom({ stl = false, obj = false, smaller }: MachineWords): ModelChoice | undefined {
  const timesSmaller = number('smaller', smaller, { over: 1, most: MOST_TIMES_SMALLER });
  if (stl || obj) return { stl, obj, ...given('timesSmaller', timesSmaller) };
  if (timesSmaller !== undefined) throw new WrongUsage('--smaller belongs to a model of the prop: add --stl or --obj.');
  return undefined;
}

function bridgesFrom(word: string | undefined): Bridges | undefined {
  if (word === undefined) return undefined;
  const [count, widthMm, ...rest] = word.split(',').map(decimal);
  if (!areBridges({ count, widthMm }) || rest.length > 0)
    throw new WrongUsage(
      `--bridges takes how many hold each piece, up to ${CUTTER_LIMITS.bridges.most}, and their width in mm, up to ${CUTTER_LIMITS.bridgeMm.most}, as 4,2, not ${word === '' ? 'nothing' : word}.`,
    );
  return { count, widthMm };
}
