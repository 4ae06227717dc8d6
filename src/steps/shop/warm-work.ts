import type { FoamPiece } from '../../model/foam-piece.ts';
import type { WarmWork } from '../../model/gluing.ts';
import type { WarmLimits } from './gluing-plan.ts';

/** What is warmed of a piece before it goes together: where it is bent or pulled more than its foam takes cold, and along scored lines. */
export function warmWork(piece: FoamPiece, { stretch, bend }: WarmLimits): readonly WarmWork[] {
  const work: WarmWork[] = [];
  const strain = Math.max(piece.bend?.outsidePct ?? 0, piece.bend?.insidePct ?? 0);
  if (piece.bend !== undefined && strain >= bend.noticePct)
    work.push({ piece: piece.id, why: 'bend', figure: piece.bend.radiusMm, place: '' });
  for (const { percent, placeText } of piece.spots ?? []) {
    if (percent >= stretch.noticePct) work.push({ piece: piece.id, why: 'form', figure: percent, place: placeText });
  }
  if ((piece.scores ?? []).length > 0) work.push({ piece: piece.id, why: 'open', figure: 0, place: '' });
  return work;
}
