import { deg, rad } from '../../geom/vec.ts';
import type { BendStyle } from '../../model/foam-piece.ts';
import type { FoamRules } from '../../model/foam-settings.ts';
import { kerfFaultText, type KerfFault, type KerfTurn } from './kerf-turn.ts';
import type { Panels } from './panels.ts';
import type { PieceSurface } from './piece-surface.ts';

export interface BendChoice {
  readonly style: BendStyle;
  /** Why, one sentence for the maker. */
  readonly reason: string;
  /** Why it is not kerfed, where that was asked for and cannot be. */
  readonly kerfFault?: KerfFault;
}

/** Kerfs come at the maker's wish alone, and where straight cuts can bend the piece; it is rolled otherwise. */
export const kerfedChoice = (turn: KerfTurn | KerfFault): BendChoice =>
  typeof turn === 'string'
    ? { style: 'rolled', reason: `Rolled, not kerfed: it ${kerfFaultText(turn)}.`, kerfFault: turn }
    : { style: 'kerfed', reason: 'Kerfed, as you asked.' };

/**
 * How a piece bends (foam model 2): grooved when most of its sharp folds, by length, lie between nearly flat panels, as
 * on a box; rolled otherwise, as on anything smooth. The maker's wish comes first.
 * @param panels parted at `rules.foldLimitDeg`.
 */
export function chooseBendStyle(
  surface: PieceSurface,
  panels: Panels,
  lengthOfHalfedge: (h: number) => number,
  rules: FoamRules,
  wish?: Exclude<BendStyle, 'kerfed'>,
): BendChoice {
  if (wish !== undefined)
    return { style: wish, reason: wish === 'rolled' ? 'Rolled, as you asked.' : 'Grooved, as you asked.' };
  const limit = rad(rules.foldLimitDeg);
  const flat = rad(rules.panelFlatDeg);
  let sharp = 0;
  let between = 0;
  let sharpest = 0;
  for (let h = 0; h < surface.across.length; h += 1) {
    const other = surface.across[h];
    const fold = Math.abs(surface.foldRad[h]);
    if (other < 0 || fold <= limit) continue;
    const [p, q] = [panels.panelOf[Math.floor(h / 3)], panels.panelOf[other]];
    const length = lengthOfHalfedge(h);
    sharp += length;
    sharpest = Math.max(sharpest, fold);
    if (p !== q && panels.leanRad[p] <= flat && panels.leanRad[q] <= flat) between += length;
  }
  const limitText = `${rules.foldLimitDeg}°`;
  if (sharp === 0) return { style: 'rolled', reason: `Rolled: no fold inside it is sharper than ${limitText}.` };
  const sharpestText = `${Math.round(deg(sharpest))}°`;
  if (2 * between >= sharp) {
    return {
      style: 'grooved',
      reason: `Grooved: folds of up to ${sharpestText}, sharper than ${limitText}, lie between nearly flat panels.`,
    };
  }
  return {
    style: 'rolled',
    reason: `Rolled: it has folds of up to ${sharpestText}, but most do not lie between nearly flat panels.`,
  };
}
