import type { RuleName } from '../project/shop-rules.ts';
import { spoken } from './language/spoken.ts';

/** Texts of the rules of the shop. Part of the words of the window. */
export const RULE_WORDS = spoken('rule', {
  summary: 'Rules of the shop',
  why: 'What the program speaks up at, and how it grooves and marks. No published limits of EVA foam were found: set what you learn at the bench. They hold for this foam alone.',
  foam: 'Rules for',
  groups: { give: 'How far the foam gives', grooves: 'Grooves and kerfs', saw: 'Saw and marks' },
  fields: {
    stretchNoticePct: 'Stretch or squash, a note from, per cent',
    stretchTooMuchPct: 'Stretch or squash, too much from, per cent',
    bendNoticePct: 'Skins by bending, a note from, per cent',
    bendTooMuchPct: 'Skins by bending, too much from, per cent',
    foldLimitDeg: 'Groove folds sharper than, degrees',
    panelFlatDeg: 'A panel is flat that leans up to, degrees',
    hingeMm: 'Left under a groove',
    leastHingeMm: 'Tears under',
    kerfMm: 'Width of a kerf',
    bevelLimitDeg: 'The saw leans at most, degrees',
    narrowThicknesses: 'A piece is narrow under, times its thickness',
    markSpacingMm: 'Match marks at most apart',
    markLeastSeamMm: 'Match marks on seams from',
  } satisfies Record<RuleName, string>,
  wrong: (least: number, most: number) => `A number from ${least} to ${most}.`,
  usual: (value: string) => `usually ${value}`,
  reset: 'the usual rules again',
} as const);
