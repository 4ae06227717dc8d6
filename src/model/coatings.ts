import data from '../../shared/coatings.json';

/**
 * When a coat is put on. seal, prime: before any paint. paint: all over, in place of a base colour or under the colours. clear: over all colours.
 */
export const COATING_USES = ['seal', 'prime', 'paint', 'clear'] as const;
export type CoatingUse = (typeof COATING_USES)[number];

/** What is put on the finished prop in coats. */
export interface Coating {
  readonly id: string;
  readonly name: string;
  readonly use: CoatingUse;
  /** Area of one coat that a litre covers, m², as the label says; or, where it does not, what it holds and how thick it dries. */
  readonly coverageM2PerL?: number;
  /** Solids by volume, per cent, and thickness of the dry film, µm. */
  readonly solidsPct?: number;
  readonly dryFilmUm?: number;
  /** Whole number, >= 1. */
  readonly coats: number;
  /** From one coat to the next, minutes; until it may be worn, hours. */
  readonly recoatMin: number;
  readonly cureH: number;
  /** Ids of the cautions that belong to it. */
  readonly cautions: readonly string[];
}

export const COATINGS: readonly Coating[] = (data.coatings as readonly Coating[]).map((coating) =>
  checkCoating(coating),
);

/** What is taken where the maker chose none: sealed, then painted by brush. */
export const FIRST_COATINGS: readonly Coating[] = COATINGS.slice(0, 2);

/**
 * Coats that go all over. Where the maker chose none and has a base colour, that takes the place of the paint the list suggests: it is not put on
 * twice.
 */
export function coatingsInForce({
  coatings,
  baseColour,
}: {
  readonly coatings?: readonly Coating[];
  readonly baseColour?: string;
}): readonly Coating[] {
  if (coatings !== undefined) return coatings;
  return baseColour === undefined ? FIRST_COATINGS : FIRST_COATINGS.filter(({ use }) => use !== 'paint');
}

/** Where the figures come from, whole sentences. */
export const COATING_SOURCES: readonly string[] = data.sources;

/** m² of one coat that a litre covers: 10 × solids in per cent / dry film in µm, where the label gives no figure of its own. */
export function coverageM2PerL({ coverageM2PerL: own, solidsPct = NaN, dryFilmUm = NaN }: Partial<Coating>): number {
  return own ?? (10 * solidsPct) / dryFilmUm;
}

/** @throws RangeError where a coating could not be used: that is our mistake; files are checked where they are read. */
export function checkCoating(coating: Coating): Coating {
  const coverage = coverageM2PerL(coating);
  const { coats, recoatMin, cureH } = coating;
  if (!(coverage > 0 && coverage < Infinity && Number.isInteger(coats) && coats >= 1 && recoatMin >= 0 && cureH >= 0))
    throw new RangeError(`coating ${coating.id} cannot be used`);
  return coating;
}
