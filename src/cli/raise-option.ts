import type { FoamSheet } from '../model/foam-stock.ts';
import type { Region } from '../model/flatten-settings.ts';
import { WrongUsage } from './exit.ts';
import { number } from './option-values.ts';

/** An area of the project, by its name, that gets a raised sheet of foam so thick; 0 takes it off. */
export interface RaiseChoice {
  readonly area: string;
  readonly thicknessMm: number;
}

/** `--raise AREA=MM`, as often as wanted. @throws WrongUsage */
export function raisesFrom(words: readonly string[] | undefined): readonly RaiseChoice[] | undefined {
  return words?.map((word) => {
    // A name may hold the sign.
    const at = word.lastIndexOf('=');
    const area = word.slice(0, Math.max(at, 0)).trim();
    const thicknessMm = number('raise', at < 0 ? undefined : word.slice(at + 1), { least: 0, most: 200 });
    if (area === '' || thicknessMm === undefined)
      throw new WrongUsage('--raise looks like badge=2: an area of the project by its name, and mm of foam.');
    return { area, thicknessMm };
  });
}

/**
 * The areas with the sheets that are raised on them.
 * @throws WrongUsage where no area has that name, or no sheet of the stock is so thick.
 */
export function raisedRegions(
  regions: readonly Region[],
  choices: readonly RaiseChoice[],
  foams: readonly FoamSheet[],
): readonly Region[] {
  return choices.reduce<readonly Region[]>((all, { area, thicknessMm }) => {
    if (!all.some(({ name }) => name === area))
      throw new WrongUsage(`--raise ${area}=${thicknessMm}: ${named(regions)}`);
    const foam = thicknessMm === 0 ? null : foamOf(foams, area, thicknessMm);
    return all.map((region) => {
      if (region.name !== area) return region;
      const { raised: _, ...bare } = region;
      if (foam === null) return bare;
      return { ...bare, raised: { foam: foam.id, thicknessMm, neutralFraction: foam.neutralFraction } };
    });
  }, regions);
}

const named = (regions: readonly Region[]): string =>
  regions.length === 0
    ? 'the project has no areas; make one in the window first.'
    : `the project has areas ${regions.map(({ name }) => name).join(', ')}.`;

function foamOf(foams: readonly FoamSheet[], area: string, thicknessMm: number): FoamSheet {
  const foam = foams.find((sheet) => sheet.thicknessMm === thicknessMm);
  if (foam !== undefined) return foam;
  const known = [...new Set(foams.map((sheet) => sheet.thicknessMm))].join(', ');
  throw new WrongUsage(`--raise ${area}=${thicknessMm}: the stock has foam of ${known} mm.`);
}
