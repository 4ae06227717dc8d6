import type { Finding } from '../../base/finding.ts';
import { formatMm } from '../../base/format-length.ts';
import type { Vec3 } from '../../geom/vec.ts';

/** Something that has no place on the new version. */
export interface Lost {
  readonly what:
    'edge' | 'path' | 'seam wish' | 'edge wish' | 'score' | 'fillet' | 'area' | 'piece' | 'opening' | 'repair' | 'size';
  /** Where it was, mm; null where that is no one place. */
  readonly at: Vec3 | null;
}

/** One of it, several of it, and what the maker does about it. */
const WORDS: Readonly<Record<Lost['what'], readonly [string, string, string]>> = {
  edge: ['edge of a seam', 'edges of seams', 'mark the seams anew where they end'],
  path: ['line across faces', 'lines across faces', 'draw what is missing of them anew'],
  'seam wish': ['wish for a seam', 'wishes for seams', 'say them anew'],
  'edge wish': ['wish for an edge', 'wishes for edges', 'say them anew'],
  score: ['edge of a scored line', 'edges of scored lines', 'score them anew'],
  fillet: ['fillet of clay', 'fillets of clay', 'choose their seams anew'],
  area: ['area', 'areas', 'make them anew'],
  piece: ['wish for a piece', 'wishes for pieces', 'say them anew'],
  opening: ['opening', 'openings', 'say anew what passes through them'],
  repair: ['repair', 'repairs', 'repair the new version where it needs it'],
  size: ['measure that gave the size', 'measures that gave the size', 'give the size anew'],
};

/** What was lost, each kind told once with how much of it. @param mostMm  distance from which on there is no place. */
export function lostFinding(lost: readonly Lost[], mostMm: number): readonly Finding[] {
  return (Object.keys(WORDS) as Lost['what'][]).flatMap((what): Finding[] => {
    const own = lost.filter((one) => one.what === what);
    if (own.length === 0) return [];
    const [one, several, then] = WORDS[what];
    const at = own.find((lostOne) => lostOne.at !== null)?.at;
    return [
      {
        code: 'carry/lost',
        severity: 'warning',
        text: `${own.length} ${own.length === 1 ? one : several} ${own.length === 1 ? 'has' : 'have'} no place within ${formatMm(mostMm)} on the new version of the sculpt: ${then}.`,
        value: own.length,
        where: at == null ? {} : { point: [at.x, at.y, at.z] },
      },
    ];
  });
}
