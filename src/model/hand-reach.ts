import data from '../../shared/hand-reach.json';

/** An opening with a rim of at least `rimMm` all round lets something in that works up to `reachMm` from the rim, along the foam. */
export interface Reach {
  readonly id: string;
  readonly rimMm: number;
  readonly reachMm: number;
}

/** From the narrowest opening to the widest. */
export const REACHES: readonly Reach[] = checkReaches(data.reaches);

/**
 * How far inside an opening a hand still works, mm along the foam: what is no deeper than a half ball with that rim is open to the hand anyhow,
 * and wider openings let in fingers, the hand, the arm.
 * @param rimMm length of the opening's rim, mm, >= 0.
 */
export function handReachMm(rimMm: number): number {
  return REACHES.reduce(
    (reach, { rimMm: least, reachMm }) => (rimMm >= least ? Math.max(reach, reachMm) : reach),
    data.bowlShare * rimMm,
  );
}

/** @throws Error where a wider opening reaches less far: a broken list is our mistake. */
export function checkReaches(reaches: readonly Reach[]): readonly Reach[] {
  reaches.forEach(({ id, rimMm, reachMm }, i) => {
    const before = reaches[i - 1] ?? { rimMm: 0, reachMm: 0 };
    if (!(rimMm > before.rimMm && reachMm > before.reachMm)) throw new Error(`reach ${id} is no farther than the last`);
  });
  return reaches;
}
