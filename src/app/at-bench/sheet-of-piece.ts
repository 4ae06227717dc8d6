import { css, html, type TemplateResult } from 'lit';
import { besideOf, type Bench } from '../bench-state.ts';
import '../sheet-picture.ts';
import type { Choice } from '../view-state.ts';
import type { CutPiece } from './work-order.ts';

/** Not to be taken hold of: a glove that scrolls would choose pieces. */
export const SHEET_SIDE_STYLE = css`
  fl-sheet-picture {
    max-inline-size: 24rem;
    pointer-events: none;
  }
`;

/** The sheet with the piece on it lit. */
export function sheetOfPiece(bench: Bench, piece: CutPiece, at: number): TemplateResult {
  const choice: Choice =
    'folds' in piece || !('part' in piece) ? { kind: 'piece', piece: piece.id } : { kind: 'part', part: piece.part };
  return html`<fl-sheet-picture
    .sheet=${bench.sheets?.sheets[at] ?? null}
    .pieces=${bench.pieces?.pieces ?? []}
    .beside=${besideOf(bench)}
    .templates=${bench.pieces?.templates ?? []}
    .choice=${choice}
  ></fl-sheet-picture>`;
}
