import { foamId, layerId, partId, pieceId } from '../../src/base/ids.ts';
import { boxOfPoints } from '../../src/geom/ring.ts';
import type { FoamPiece, TracedSide } from '../../src/model/foam-piece.ts';
import type { Template } from '../../src/model/template.ts';

/**
 * A piece with square edges.
 * @param outline packed xy, counter-clockwise, one point for each vertex of its border.
 * @param uv      packed xy of all its vertices; the outline's when left out.
 */
export function squarePiece(
  id: string,
  number: number,
  outline: ArrayLike<number>,
  thicknessMm: number,
  tracedSide: TracedSide = 'face',
  uv: ArrayLike<number> = outline,
): FoamPiece {
  const ring = Float64Array.from(outline);
  return {
    id: pieceId(id),
    number,
    name: `Piece ${number}`,
    part: partId('part'),
    layer: layerId('layer'),
    foam: foamId('f'),
    thicknessMm,
    quantity: 1,
    bendStyle: 'rolled',
    bendReason: 'It is smooth.',
    tracedSide,
    revision: 'A',
    patch: number - 1,
    uv: Float64Array.from(uv),
    neutralOutline: ring,
    neutralHoles: [],
    outline: ring,
    holes: [],
    otherOutline: ring,
    otherHoles: [],
    edges: [],
    folds: [],
    marks: [],
    up: null,
    areaMm2: 0,
    surfaceAreaMm2: 0,
    findings: [],
  };
}

/** Its cut line and number as drawn, mirrored where the back is traced. */
export function templateOf({ id, number, outline, tracedSide }: FoamPiece): Template {
  const reversed = tracedSide === 'back';
  const points = outline.map((x, i) => (reversed && i % 2 === 0 ? -x : x));
  const box = boxOfPoints(points);
  return {
    piece: id,
    reversed,
    box,
    foamBox: box,
    drawing: {
      strokes: [{ role: 'cut', points, closed: true }],
      words: [
        {
          text: String(number),
          at: { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 },
          angleRad: 0,
          heightMm: 5,
          align: 'centre',
        },
      ],
    },
  };
}
