import type { Work } from '../base/work.ts';
import type { AreaInClay } from '../model/clay-core.ts';
import type { Pipeline } from '../pipeline/pipeline.ts';
import { needSculptAtWork } from '../project/at-work.ts';
import { setClayCore } from '../project/clay-core-commands.ts';
import type { Project } from '../project/project.ts';
import { WrongUsage } from './exit.ts';
import { given, number } from './option-values.ts';
import { withArea } from './paint-option.ts';

/** Thickest cover, sheet and wall that is asked for, mm. */
const MOST_MM = 1000;

/** Areas modelled in clay over a core of sheet. */
export interface ClayOption {
  /** An area by its name, with the least clay over its core, mm; 0 makes it of foam again. */
  readonly areas: readonly { readonly area: string; readonly coverMm: number }[];
  /** Thicknesses of the core's sheets, mm; left out, the sheet of the wall that is seen. */
  readonly sheetsMm?: readonly number[];
  /** Wall of hollow cores, mm; left out, they are whole. */
  readonly wallMm?: number;
}

/** `--clay-area AREA=MM` as often as wanted, `--clay-sheets MM,MM`, `--clay-wall MM`; nothing where no area is. @throws WrongUsage */
export function clayFrom(values: {
  readonly 'clay-area'?: string[] | undefined;
  readonly 'clay-sheets'?: string | undefined;
  readonly 'clay-wall'?: string | undefined;
}): ClayOption | undefined {
  const { 'clay-area': areas, 'clay-sheets': sheets, 'clay-wall': wall } = values;
  if (areas === undefined) {
    if (sheets !== undefined || wall !== undefined)
      throw new WrongUsage('--clay-sheets and --clay-wall say how the core under --clay-area is built: name an area.');
    return undefined;
  }
  const limits = { over: 0, most: MOST_MM };
  const sheetsMm = sheets?.split(',').map((mm) => number('clay-sheets', mm.trim(), limits) ?? 0);
  return {
    areas: areas.map((word) => {
      // A name may hold the sign.
      const at = word.lastIndexOf('=');
      const area = word.slice(0, Math.max(at, 0)).trim();
      const cover = number('clay-area', at < 0 ? undefined : word.slice(at + 1), { least: 0, most: MOST_MM });
      if (area === '' || cover === undefined)
        throw new WrongUsage(
          '--clay-area looks like nose=4: an area of the project or a group of the file by its name, and how much clay lies over its core at least, in mm; 0 for none.',
        );
      return { area, coverMm: cover };
    }),
    ...given('sheetsMm', sheetsMm),
    ...given('wallMm', number('clay-wall', wall, limits)),
  };
}

/**
 * The project with areas in clay; a group of the file becomes an area where none has its name.
 * @throws WrongUsage where neither has, or the stock holds no sheet so thick.
 */
export async function withClay(
  project: Project,
  option: ClayOption | undefined,
  pipeline: Pipeline,
  work: Work,
): Promise<Project> {
  const { areas = [], sheetsMm, wallMm } = option ?? {};
  let said = project;
  for (const { area, coverMm } of areas) {
    const found = await withArea(said, area, `--clay-area ${area}=${coverMm}`, pipeline, work);
    const foams = sheetsMm?.map((mm) => foamOf(said, mm)) ?? [usualFoam(said)];
    const wish: AreaInClay = { coverMm, foams, ...given('wallMm', wallMm) };
    said = setClayCore(found.region.id, coverMm === 0 ? null : wish).apply(found.project);
  }
  return said;
}

function foamOf({ foams }: Project, mm: number): AreaInClay['foams'][number] {
  const foam = foams.find(({ thicknessMm }) => thicknessMm === mm);
  if (foam !== undefined) return foam.id;
  const known = [...new Set(foams.map(({ thicknessMm }) => thicknessMm))].join(', ');
  throw new WrongUsage(`--clay-sheets ${mm}: the stock has foam of ${known} mm.`);
}

function usualFoam(project: Project): AreaInClay['foams'][number] {
  const { layers } = needSculptAtWork(project);
  return layers[layers.length - 1].foam;
}
