import { leanSeenFrom, leansText, settingText, SQUARE_DEG, wholeDeg } from '../../base/lean-words.ts';
import type { LeanWords } from '../../base/lean-words.ts';
import type { PlainPiece } from '../../model/plain-piece.ts';

/** One setting of the saw and the edges that it cuts. */
export interface BevelRow {
  /** `45° in under`, `10° to 20° in under`. */
  readonly setting: string;
  /** Lengths of its edges in the order they lie, mm. */
  readonly lengthsMm: readonly number[];
}

/** How the saw is set for a piece that no sculpt was parted for: its edges have no letters and are known by their lengths. Square ones are left out. */
export function plainBevels(
  { draft, tracedSide }: Pick<PlainPiece, 'draft' | 'tracedSide'>,
  words?: LeanWords,
): readonly BevelRow[] {
  const rows = new Map<string, number[]>();
  for (const { bevelDeg, lengthMm } of [draft.outline, ...draft.holes].flat()) {
    const leans = [bevelDeg.from, bevelDeg.middle, bevelDeg.to].map((deg) => leanSeenFrom(tracedSide, deg));
    if (leans.every((lean) => Math.abs(lean) < SQUARE_DEG)) continue;
    const [least, most] = [Math.min(...leans), Math.max(...leans)];
    const setting =
      most - least < SQUARE_DEG
        ? settingText(leans[1], words)
        : leansText([leans[0], leans[2], least, most].map(wholeDeg), words);
    rows.set(setting, [...(rows.get(setting) ?? []), lengthMm]);
  }
  return [...rows].map(([setting, lengthsMm]) => ({ setting, lengthsMm }));
}
