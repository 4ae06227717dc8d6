import type { FirstTouch, GluingRun } from '../../model/gluing.ts';
import type { SeamChain } from '../../model/seams.ts';
import type { NetRun } from './gluing-steps.ts';

/** A match mark on a seam, by its place from the seam's start, mm. */
export interface MarkAt {
  readonly index: number;
  readonly stationMm: number;
}

/** A seam shorter than this is begun at an end even where both are free, mm: it cannot run off far [J]. */
const SHORT_MM = 60;

/** Marks this near the middle of a seam or nearer are as good as the middle, as a share of its length [J]. */
const NEAR_MIDDLE = 0.3;

/** What a stretch of seam is rolled by. */
export interface Stretch {
  readonly run: NetRun;
  readonly chain: SeamChain;
  /** Along the chain, mm. */
  readonly fromMm: number;
  readonly toMm: number;
  readonly lengthMm: number;
  readonly marks: readonly MarkAt[];
  /** What a chain is called on paper. */
  readonly letterOf: (chain: number) => string;
  readonly positions: ArrayLike<number>;
}

/**
 * Where a stretch is touched first and rolled to. Edges that are held together at one end are rolled from there; where both ends are held, or
 * neither is, they are put together half-way, so that what they differ by is shared out. What was begun before is gone on with.
 */
export function firstTouch(stretch: Stretch): Pick<GluingRun, 'touch' | 'roll'> {
  const { run, chain, fromMm, toMm, lengthMm } = stretch;
  const goesOn = fromMm > 0;
  const isLast = toMm >= lengthMm;
  const atStart = goesOn || run.heldAtStart;
  const atEnd = isLast && run.heldAtEnd;
  if (atStart && !(atEnd && !goesOn)) {
    return { touch: touchAt(stretch, fromMm, goesOn ? [] : run.roundStart), roll: 'ahead' };
  }
  if (atEnd && !atStart) return { touch: touchAt(stretch, toMm, run.roundEnd), roll: 'back' };
  if (!atEnd && toMm - fromMm < SHORT_MM && !chain.closed)
    return { touch: touchAt(stretch, fromMm, []), roll: 'ahead' };
  return { touch: touchMiddle(stretch), roll: 'both' };
}

function touchMiddle(stretch: Stretch): FirstTouch {
  const { fromMm, toMm, marks } = stretch;
  const middle = (fromMm + toMm) / 2;
  const near = marks
    .filter(({ stationMm }) => Math.abs(stationMm - middle) <= NEAR_MIDDLE * (toMm - fromMm))
    .sort((a, b) => Math.abs(a.stationMm - middle) - Math.abs(b.stationMm - middle) || a.index - b.index)
    .at(0);
  const stationMm = near?.stationMm ?? middle;
  const at = near === undefined ? ({ at: 'middle' } as const) : ({ at: 'mark', mark: near.index } as const);
  return { ...at, stationMm, ...placeOn(stretch, stationMm) };
}

/** @param round the glued chains at that corner. */
function touchAt(stretch: Stretch, stationMm: number, round: readonly number[]): FirstTouch {
  const { marks, letterOf, fromMm } = stretch;
  const place = { stationMm, ...placeOn(stretch, stationMm) };
  if (round.length > 0) return { at: 'corner', beside: letterOf(round[0]), ...place };
  const mark = marks.find((one) => one.stationMm === stationMm);
  return fromMm > 0 && mark !== undefined ? { at: 'mark', mark: mark.index, ...place } : { at: 'end', ...place };
}

/** Point and way of a seam at a place along it. */
function placeOn(
  { chain: { vertices }, positions }: Pick<Stretch, 'chain' | 'positions'>,
  stationMm: number,
): Pick<FirstTouch, 'point' | 'along'> {
  let rest = stationMm;
  for (let i = 0; ; i += 1) {
    const [a, b] = [3 * vertices[i], 3 * vertices[i + 1]];
    const way = [0, 1, 2].map((k) => positions[b + k] - positions[a + k]);
    const mm = Math.hypot(...way);
    if (rest <= mm || i + 2 >= vertices.length) {
      const share = mm > 0 ? Math.min(1, rest / mm) : 0;
      const at = (k: number): number => positions[a + k] + share * way[k];
      const along = (k: number): number => (mm > 0 ? way[k] / mm : 0);
      return { point: [at(0), at(1), at(2)], along: [along(0), along(1), along(2)] };
    }
    rest -= mm;
  }
}
