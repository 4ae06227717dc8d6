import { pieceId, type FoamId, type PartId } from '../../base/ids.ts';
import { offsetRing } from '../../geom/offset-ring.ts';
import { chainPoints } from '../../geom/outline.ts';
import { ringArea, type Ring } from '../../geom/ring.ts';
import { checkPlainDraft, type PlainDraft, type PlainPiece } from '../../model/plain-piece.ts';
import type { ShapeEdge } from '../../model/shape.ts';
import { handedDrafts, type MirroredCopies } from './handed-drafts.ts';
import { revisionCode } from './revision.ts';

/** Farthest that a straight part of a line to cut lies off its curve, mm: far under the width of the line. */
const CHORD_MM = 0.02;

/**
 * Pieces of a part that no sculpt was parted for, numbered on, with the lines to cut on their face and back.
 * @param part    its id, its name, by which its pieces are told from those of others, and how many of it the prop has, and how many of these are mirror images.
 * @param foamOf  foam of a thickness in mm.
 * @throws Error on a broken draft (`checkPlainDraft`).
 */
export function plainPieces(
  part: { readonly id: PartId; readonly name: string; readonly copies: number; readonly mirrored?: MirroredCopies },
  drafts: readonly PlainDraft[],
  firstNumber: number,
  foamOf: (thicknessMm: number) => FoamId,
): readonly PlainPiece[] {
  return handedDrafts(drafts, part.copies, part.mirrored).map((draft, i) => {
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

/**
 * Outline and holes at a height over the surface they are drawn on, towards the face, mm: each place of an edge moves outward by the height times the
 * tangent of its lean (foam model 4), and neighbours meet again.
 */
function ringsAt({ outline, holes }: PlainDraft, heightMm: number): readonly Ring[] {
  return [outline, ...holes].map((edges) => ringAt(edges, heightMm));
}

function ringAt(edges: readonly ShapeEdge[], heightMm: number): Ring {
  const points: number[] = [];
  const [atStart, atEnd]: [number[], number[]] = [[], []];
  for (const edge of edges) {
    const chain = chainPoints(edge.segments, CHORD_MM);
    const stations = [0];
    for (let i = 1; i < chain.length; i += 1)
      stations.push(stations[i - 1] + Math.hypot(chain[i].x - chain[i - 1].x, chain[i].y - chain[i - 1].y));
    const length = stations[stations.length - 1];
    for (let i = 0; i + 1 < chain.length; i += 1) {
      points.push(chain[i].x, chain[i].y);
      atStart.push(heightMm * Math.tan(leanAt(edge, length === 0 ? 0 : stations[i] / length)));
      atEnd.push(heightMm * Math.tan(leanAt(edge, length === 0 ? 1 : stations[i + 1] / length)));
    }
  }
  const ring = Float64Array.from(points);
  if (atStart.every((mm) => mm === 0) && atEnd.every((mm) => mm === 0)) return ring;
  return offsetRing(ring, { atStart: Float64Array.from(atStart), atEnd: Float64Array.from(atEnd) }).ring;
}

/** Lean at a share of an edge's length, radians; between its start, half-way and its end it changes evenly. */
function leanAt({ bevelDeg: { from, middle, to } }: ShapeEdge, share: number): number {
  const deg = share < 0.5 ? from + (middle - from) * 2 * share : middle + (to - middle) * (2 * share - 1);
  return (deg * Math.PI) / 180;
}
