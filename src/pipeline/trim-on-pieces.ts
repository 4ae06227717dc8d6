import { Memo } from '../base/memo.ts';
import { boxOfPoints } from '../geom/ring.ts';
import type { MeshLine } from '../mesh/lines/mesh-line.ts';
import { surfaceOf } from '../mesh/surface.ts';
import type { FoamPiece, PiecePlacing } from '../model/foam-piece.ts';
import { tracesOnPieces } from '../steps/assembly/on-pieces.ts';
import { revisionCode } from '../steps/foam/revision.ts';
import type { CutSculpt } from './outcome.ts';
import type { NamedStrips } from './plain/plain-outcome.ts';
import { remembered } from './remembered.ts';
import { traceOf } from './trace-of-line.ts';

/** Results kept: a maker goes a few steps back and forth. */
const KEPT = 8;

/** Lines under strips and of artwork as they lie on the pieces of a sculpt. */
export class TrimOnPieces {
  readonly #known = new Memo<unknown[], readonly FoamPiece[]>(KEPT);

  /**
   * The pieces with the edges and match marks of all strips, and the lines of all artwork, that lie on them; the same pieces where none does.
   * @param cut  what the pieces of the sheet that is seen were cut from; the strips were laid on its mesh.
   */
  of(
    pieces: readonly FoamPiece[],
    { mesh, patches }: Pick<CutSculpt, 'mesh' | 'patches'>,
    strips: readonly NamedStrips[],
  ): readonly FoamPiece[] {
    if (strips.length === 0) return pieces;
    const key = [pieces, mesh, patches, ...strips.flatMap(({ name, laid }) => [name, laid])];
    return remembered(this.#known, key, () => {
      const surface = surfaceOf(mesh);
      const lines = strips.flatMap(({ name, laid }) => linesOf(laid).map((one) => ({ name, ...one })));
      const grounds = pieces.map(({ patch, uv }) => ({ patch: patches[patch], uv }));
      const { traces } = tracesOnPieces(
        lines.map(({ line }) => traceOf(surface, line)),
        grounds,
      );
      return pieces.map((piece, i) => {
        const own = traces.filter((trace) => trace.piece === i && spanOf(trace.points) > LEAST_MM);
        if (own.length === 0) return piece;
        const placings = own.map(({ trace, closed, points }): PiecePlacing => {
          const { name, what } = lines[trace];
          return { strip: name, what, points, closed };
        });
        return { ...piece, placings, revision: revisionCode([piece.revision, placings]) };
      });
    });
  }
}

function linesOf(
  laid: NamedStrips['laid'],
): readonly { readonly what: PiecePlacing['what']; readonly line: MeshLine }[] {
  if ('art' in laid) return laid.art.lines.map(({ line }) => ({ what: 'engraving', line }));
  return laid.placing.flatMap(({ left, right, marks }) => [
    ...[...left, ...right].map((line) => ({ what: 'edge' as const, line })),
    ...marks.map((line) => ({ what: 'mark' as const, line })),
  ]);
}

/** What is shorter lies within the width of a line, mm. */
const LEAST_MM = 0.1;

/** From corner to corner of the box round a line, mm. */
function spanOf(points: Float64Array): number {
  const { minX, minY, maxX, maxY } = boxOfPoints(points);
  return Math.hypot(maxX - minX, maxY - minY);
}
