import data from '../../shared/glues.json';

/** A contact adhesive: what its label says, and how fast it is worked with. */
export interface Glue {
  readonly id: string;
  readonly name: string;
  /** From brushing an edge until it may be joined, minutes, >= 0. */
  readonly waitMin: number;
  /** From brushing an edge until it must be joined, minutes, more than `waitMin` and what it takes to find the first touch. */
  readonly openMin: number;
  /** How fast an edge is brushed and a seam rolled shut, mm of edge and of seam in a minute. */
  readonly brushMmPerMin: number;
  readonly joinMmPerMin: number;
  /** To pick up what is joined and find the first touch, minutes for each seam, >= 0. */
  readonly alignMinPerSeam: number;
  /** Until it holds all it can, hours. */
  readonly cureH: number;
  /** Area of one face that a litre covers, m². */
  readonly coverageM2PerL: number;
  /** Ids of the cautions that belong to it. */
  readonly cautions: readonly string[];
}

export const GLUES: readonly Glue[] = data.glues.map((glue) => checkGlue(glue));

/** What is taken where the maker chose none. */
export const FIRST_GLUE: Glue = GLUES[0];

/** Where the figures come from, whole sentences. */
export const GLUE_SOURCES: readonly string[] = data.sources;

/** @throws RangeError where a glue could not be used: that is our mistake; files are checked where they are read. */
export function checkGlue(glue: Glue): Glue {
  const { id, waitMin, openMin, brushMmPerMin, joinMmPerMin, alignMinPerSeam, cureH, coverageM2PerL } = glue;
  const isFast = brushMmPerMin > 0 && joinMmPerMin > 0 && alignMinPerSeam >= 0;
  const isSound = waitMin >= 0 && openMin > waitMin + alignMinPerSeam && isFast && cureH >= 0 && coverageM2PerL > 0;
  if (!isSound) throw new RangeError(`glue ${id} cannot be used`);
  return glue;
}
