import type { FoamId } from '../base/ids.ts';
import type { Project } from '../project/project.ts';
import { glueNamed, GLUE_NAMES, setCurrency, setGlue, setSheetPrice } from '../project/shop-commands.ts';
import { Refused, WrongUsage } from './exit.ts';
import { decimal, given, oneOf } from './option-values.ts';

/** What is said of glue and prices. */
export interface ShopOption {
  /** One of {@link GLUE_NAMES}. */
  readonly glue?: string;
  readonly currency?: string;
  /** Of a sheet of the foam that is so thick. */
  readonly sheetPrices?: readonly { readonly thicknessMm: number; readonly price: number }[];
}

/** `--glue NAME`, `--currency TEXT`, `--sheet-price MM=N` as often as wanted; nothing where none is. @throws WrongUsage */
export function shopFrom(values: {
  readonly glue?: string | undefined;
  readonly currency?: string | undefined;
  readonly 'sheet-price'?: string[] | undefined;
}): ShopOption | undefined {
  const { glue, currency, 'sheet-price': prices } = values;
  if (glue === undefined && currency === undefined && prices === undefined) return undefined;
  if (currency?.trim() === '') throw new WrongUsage('--currency takes what prices are in, as EUR, not nothing.');
  return {
    ...given('glue', oneOf('glue', glue, GLUE_NAMES)),
    ...given('currency', currency),
    ...given('sheetPrices', prices?.map(priceFrom)),
  };
}

function priceFrom(word: string): { thicknessMm: number; price: number } {
  const [thicknessMm, price, ...rest] = word.split('=').map((part) => decimal(part.replace(',', '.')));
  if (rest.length > 0 || !(thicknessMm > 0) || !(price >= 0))
    throw new WrongUsage('--sheet-price looks like 6=24.50: the foam by its thickness in mm, and what a sheet costs.');
  return { thicknessMm, price };
}

/** The project with what was said of it. @throws Refused where a price is for a foam that nothing is cut from. */
export function withShop(project: Project, option: ShopOption | undefined): Project {
  if (option === undefined) return project;
  const { glue, currency, sheetPrices = [] } = option;
  const used = foamsInUse(project);
  const commands = [
    ...(glue === undefined ? [] : [setGlue(glueNamed(glue))]),
    ...(currency === undefined ? [] : [setCurrency(currency)]),
    ...sheetPrices.flatMap(({ thicknessMm, price }) => {
      const foams = project.foams.filter((foam) => foam.thicknessMm === thicknessMm && used.has(foam.id));
      if (foams.length === 0)
        throw new Refused(`--sheet-price ${thicknessMm}=${price}: nothing is cut from ${thicknessMm} mm foam.`);
      return foams.map(({ id }) => setSheetPrice(id, price));
    }),
  ];
  return commands.reduce((changed, command) => command.apply(changed), project);
}

/** Foams that anything is cut from. */
export function foamsInUse({ parts }: Project): ReadonlySet<FoamId> {
  return new Set(
    parts.flatMap(({ layers, pieceSettings, regions }) => [
      ...layers.map(({ foam }) => foam),
      ...pieceSettings.flatMap(({ foam }) => foam ?? []),
      ...regions.flatMap(({ raised }) => raised?.foam ?? []),
    ]),
  );
}
