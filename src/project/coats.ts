import { COATINGS, coatingsInForce, coverageM2PerL, type Coating } from '../model/coatings.ts';
import type { Project } from './project.ts';

/** What is put on the finished prop all over, in its order: as the maker says, else sealed and painted, or sealed where there is a base colour. */
export const coatsOf = ({ shop }: Pick<Project, 'shop'>): readonly Coating[] => coatingsInForce(shop ?? {});

/** Kinds of coats that can be chosen; their figures are those of shared/coatings.json. */
export const KNOWN_COATS: readonly Coating[] = COATINGS;

/** Area of one coat that a litre covers, m². */
export const coverageOf = (coat: Coating): number => coverageM2PerL(coat);

/** A coat with the coverage that its label tells, m², > 0. */
export function withCoverage({ solidsPct: _, dryFilmUm: __, ...rest }: Coating, m2PerL: number): Coating {
  return { ...rest, coverageM2PerL: m2PerL };
}
