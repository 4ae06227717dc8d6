import type { Stepwise } from '../base/stepwise.ts';
import type { PropPlate, PropView } from '../model/bench-view.ts';
import { assemblyOrder } from '../steps/dryfit/assembly-order.ts';
import { joinedSeams } from '../steps/dryfit/dry-fit.ts';
import type { BentSide } from '../steps/dryfit/placed-edge.ts';
import { plateSkins } from '../steps/dryfit/prop-plate.ts';
import { bentSeam } from './dry-fit.ts';
import type { LayerOutcome, Outcome } from './outcome.ts';

/**
 * The finished prop: every piece of every sheet of the wall, bent back as a thick plate that ends where it was cut. Inner sheets are put
 * together first.
 * @returns null before there are pieces.
 */
export function* propSteps({
  layers,
  raised,
  project,
}: Pick<Outcome, 'layers' | 'raised' | 'project'>): Stepwise<PropView | null> {
  const plates: PropPlate[] = [];
  // What is laid on the wall comes last.
  const inOrder = [...layers.toReversed(), ...raised];
  let inPlace = 0;
  for (const layer of inOrder) {
    const { cut, pieces, seams } = layer;
    if (cut === null || pieces === null) return null;
    const firstPiece = firstPieceOf([...layers, ...raised], layer);
    const limits = project.foams.find(({ id }) => id === layer.plan.choice.foam)?.stretchLimits;
    const sides = yield* sidesOfPieces(layer, limits?.tooMuchPct ?? 0);
    const order = assemblyOrder(
      pieces,
      (seams ?? []).map(({ pieces: ids, trueLengthMm }) => ({ pieces: ids, lengthMm: trueLengthMm })),
    );
    for (const [i, { id, patch }] of pieces.entries()) {
      yield;
      const { face, back } = plateSkins(cut.patches[patch], cut.shells[patch], sides.get(id) ?? []);
      plates.push({
        piece: firstPiece + i,
        sheet: layer.plan.sheet,
        order: inPlace + order[i],
        triangles: cut.patches[patch].triangles,
        face: new Float32Array(face),
        back: new Float32Array(back),
      });
    }
    inPlace += pieces.length;
  }
  return plates.length === 0 ? null : { plates };
}

/** Number of a sheet's first piece among those of all sheets. */
function firstPieceOf(sheets: readonly LayerOutcome[], sheet: LayerOutcome): number {
  return sheets.slice(0, sheets.indexOf(sheet)).reduce((sum, { pieces }) => sum + (pieces?.length ?? 0), 0);
}

function* sidesOfPieces(layer: LayerOutcome, tooMuchPct: number): Stepwise<ReadonlyMap<string, readonly BentSide[]>> {
  const sides = new Map<string, BentSide[]>();
  const { cut, bends, hinges, pieces, seams } = layer;
  if (cut === null || bends === null) return sides;
  for (const joined of joinedSeams(pieces ?? [], seams ?? [])) {
    yield;
    const bent = bentSeam({ cut, bends, hinges, tooMuchPct }, joined);
    joined.sides.forEach(({ piece }, which) => sides.set(piece.id, [...(sides.get(piece.id) ?? []), bent[which]]));
  }
  return sides;
}
