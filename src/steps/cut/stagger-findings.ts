import type { Finding } from '../../base/finding.ts';
import type { SeamChain } from '../../model/seams.ts';
import type { StayReason } from './stagger-moves.ts';

/** A seam that stays over the one of the sheet above. */
export interface Stay {
  /** Index of the chain. */
  readonly chain: number;
  readonly reason: StayReason;
  /** Greatest distance that would work, mm, where it is known. */
  readonly reachMm?: number;
}

/** Seams named one by one at most. */
const MOST_NAMED = 8;

/** Tells the seams that stay, by reason; those in a narrow piece one by one, each with what would work. */
export function stayFindings(chains: readonly SeamChain[], stays: readonly Stay[], askedMm: number): Finding[] {
  const where = (some: readonly Stay[]): Finding['where'] => ({
    edges: some.map(({ chain }) => [chains[chain].vertices[0], chains[chain].vertices[1]] as const),
  });
  const together = (reason: StayReason, severity: Finding['severity'], why: string): Finding[] => {
    const some = stays.filter((stay) => stay.reason === reason);
    if (some.length === 0) return [];
    const text = `${named(chains, some)} of a staggered sheet ${some.length === 1 ? 'stays' : 'stay'} over the seam of the sheet that is seen: ${why}`;
    return [{ code: `cut/stagger-${reason}`, severity, text, value: some.length, where: where(some) }];
  };
  const narrow = stays
    .filter(({ reason }) => reason === 'narrow')
    .map((stay): Finding => {
      const reachMm = Math.floor(10 * (stay.reachMm ?? 0)) / 10;
      const works =
        reachMm >= 1
          ? `${reachMm} mm beside it would work; give the sheet that, or a wider piece.`
          : 'no distance works there; give the sheet a wider piece.';
      return {
        code: 'cut/stagger-narrow',
        severity: 'warning',
        text: `${named(chains, [stay])} of a staggered sheet stays over the seam of the sheet that is seen: the piece beside it is too narrow for ${askedMm} mm, ${works}`,
        value: reachMm,
        limit: askedMm,
        unit: 'mm',
        where: where([stay]),
      };
    });
  return [
    ...together('crease', 'note', 'a sheet does not bend over the crease it runs along. Glue there with care.'),
    ...together('dart', 'note', 'a seam that ends inside a piece cannot go elsewhere. Glue there with care.'),
    ...narrow,
    ...together(
      'form',
      'warning',
      `moved by ${askedMm} mm, a piece would come apart, close to a ring, or end in an edge too short to cut. Give the sheet less, or part it otherwise there.`,
    ),
  ];
}

function named(chains: readonly SeamChain[], stays: readonly Stay[]): string {
  const letters = stays.slice(0, MOST_NAMED).map(({ chain }) => chains[chain].letter);
  const rest = stays.length - letters.length;
  return `${stays.length === 1 ? 'Seam' : 'Seams'} ${letters.join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`;
}
