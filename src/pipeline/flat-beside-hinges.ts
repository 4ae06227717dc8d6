import { length3, pointAt3, rad, sub3 } from '../geom/vec.ts';
import type { SeamChain } from '../model/seams.ts';
import type { ShellLayer } from '../model/shell-layer.ts';
import type { PartBends } from '../steps/foam/part-bends.ts';

/**
 * What turns by less than this is flat: a sculpt's numbers are rounded. At another depth of the thickest foam a piece so bent is longer by
 * less than a twentieth of a millimetre.
 */
const FLAT_RAD = rad(0.2);

/**
 * Flat pieces on the surfaces of their folded neighbours. A line drawn across a panel lies a little elsewhere in it at every depth of the foam,
 * because the panel's corners move aside as it becomes smaller inward. So both pieces beside it have to be measured at one depth. One flat
 * piece is as long at any depth as at any other, and takes that of the neighbour with which it shares most of such lines, on and on from
 * neighbour to neighbour.
 * @param own    the sheet each patch is cut from.
 * @param hinged what each keeps its length on by itself: another one than its sheet where it is folded.
 */
export function flatBesideHinges(
  { patches }: PartBends,
  chains: readonly SeamChain[],
  own: readonly ShellLayer[],
  hinged: readonly ShellLayer[],
): readonly ShellLayer[] {
  const shells = [...hinged];
  const isOpen = patches.map(
    ({ panels }, i) => hinged[i] === own[i] && panels.count === 1 && panels.leanRad[0] < FLAT_RAD,
  );
  const flats = chains.filter(
    ({ sides: [a, b] }) => b !== undefined && a.patch !== b.patch && (isOpen[a.patch] || isOpen[b.patch]),
  );
  for (let isChanged = flats.length > 0; isChanged;) {
    // What was found in one round serves the next, so that the order of the pieces does not matter.
    const before = [...shells];
    const shared = new Map<number, Map<ShellLayer, number>>();
    const take = (patch: number, from: number, lengthMm: number): void => {
      if (!isOpen[patch] || before[from] === own[from] || own[from] !== own[patch] || lengthMm === 0) return;
      const sums = shared.get(patch) ?? new Map<ShellLayer, number>();
      shared.set(patch, sums.set(before[from], (sums.get(before[from]) ?? 0) + lengthMm));
    };
    for (const chain of flats) {
      const [{ patch: a }, { patch: b }] = chain.sides;
      const lengthMm = flatLength(chain, own[a]);
      take(a, b, lengthMm);
      take(b, a, lengthMm);
    }
    for (const [patch, sums] of shared) {
      isOpen[patch] = false;
      shells[patch] = [...sums].reduce((most, one) => (one[1] > most[1] ? one : most))[0];
    }
    isChanged = shared.size > 0;
  }
  return shells;
}

/** Length of a chain along which the surface runs straight on across it, mm on the face. */
function flatLength({ vertices, foldRad }: SeamChain, { facePositions }: ShellLayer): number {
  let sum = 0;
  foldRad.forEach((fold, i) => {
    const [from, to] = [vertices[i], vertices[i + 1]].map((v) => pointAt3(facePositions, v));
    if (Math.abs(fold) < FLAT_RAD) sum += length3(sub3(to, from));
  });
  return sum;
}
