import { pieceId, type FoamId, type PartId } from '../../base/ids.ts';
import { handOf4, type Matrix4 } from '../../geom/matrix4.ts';
import { ringArea } from '../../geom/ring.ts';
import { mirroredDraft } from '../../model/mirrored-draft.ts';
import { checkPlainDraft, type PlainDraft, type PlainPiece } from '../../model/plain-piece.ts';
import type { ShapeEdge } from '../../model/shape.ts';
import { ringsAt } from './draft-rings.ts';
import { handedDrafts, type MirroredCopies } from './handed-drafts.ts';
import { revisionCode } from './revision.ts';

/**
 * Pieces of a part that no sculpt was parted for, numbered on, with the lines to cut on their face and back.
 * @param part    its id, its name, by which its pieces are told from those of others, how many of it the prop has, how many of these are mirror images of the first,
 *                and the first one's place: where that mirrors it, its pieces are the mirror images of the drafts, under their keys.
 * @param foamOf  foam of a thickness in mm.
 * @throws Error on a broken draft (`checkPlainDraft`).
 */
export function plainPieces(
  part: {
    readonly id: PartId;
    readonly name: string;
    readonly copies: number;
    readonly mirrored?: MirroredCopies;
    readonly transform?: Matrix4;
  },
  drafts: readonly PlainDraft[],
  firstNumber: number,
  foamOf: (thicknessMm: number) => FoamId,
): readonly PlainPiece[] {
  const isMirrored = part.transform !== undefined && handOf4(part.transform) < 0;
  const own = isMirrored ? drafts.map((draft) => ({ ...mirroredDraft(draft), key: draft.key })) : drafts;
  return handedDrafts(own, part.copies, part.mirrored).map((draft, i) => {
    checkPlainDraft(draft);
    const { key, thicknessMm, drawnAt } = draft;
    const name = nameInProp(part.name, draft.name);
    const { quantity } = draft;
    const [number, foam] = [firstNumber + i, foamOf(thicknessMm)];
    const faceRings = ringsAt(draft, (1 - drawnAt) * thicknessMm);
    const isSquare = [draft.outline, ...draft.holes].every((edges) => edges.every(isSquareEdge));
    const backRings = isSquare ? faceRings : ringsAt(draft, -drawnAt * thicknessMm);
    const lines = draft.lines.map(({ role, points, text }) => [role, points, text]);
    return {
      id: pieceId(`${part.id}/${key}`),
      number,
      name,
      quantity,
      thicknessMm,
      tracedSide: 'face' as const,
      revision: revisionCode([number, name, quantity, thicknessMm, foam, faceRings, backRings, lines, draft.notes]),
      part: part.id,
      foam,
      draft,
      faceRings,
      backRings,
      areaMm2: faceRings.reduce((sum, ring) => sum + ringArea(ring), 0),
    };
  });
}

/** A piece that is called as its part is has that name once. */
const nameInProp = (part: string, piece: string): string =>
  part.toLowerCase() === piece.toLowerCase() ? part : `${part} ${piece}`;

const isSquareEdge = ({ bevelDeg: { from, middle, to } }: ShapeEdge): boolean => from === 0 && middle === 0 && to === 0;
