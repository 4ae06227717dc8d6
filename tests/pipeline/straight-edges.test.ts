import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import type { FoamPiece } from '../../src/model/foam-piece.ts';
import { makeSample } from '../support/run-sample.ts';

const { project, pipeline, outcome: base } = await makeSample('helm');
const { fileVertex } = base.sculpt?.mesh ?? { fileVertex: [] };

/** A chain of the helm with the most vertices among those of its kind. */
function longest(kind: 'butt' | 'open') {
  const open = (base.cut?.chains ?? []).filter((chain) => chain.kind === kind && !chain.closed);
  return open.reduce((a, b) => (b.vertices.length > a.vertices.length ? b : a));
}

async function withStraight(chain: ReturnType<typeof longest>): Promise<Outcome> {
  const edge = [fileVertex[chain.vertices[0]], fileVertex[chain.vertices[1]]] as const;
  const edgeWishes = [{ edge, straight: true }];
  return pipeline.run({ ...project, parts: [{ ...project.parts[0], edgeWishes }] }, QUIET_WORK);
}

/** Greatest distance of the points of the cut outline along an edge from the line between the outermost two, mm. */
function bowOfCut(piece: FoamPiece, seam: string): number {
  const edge = piece.edges.find((candidate) => candidate.seam === seam);
  if (edge === undefined) throw new Error('no such edge');
  const corners = piece.neutralOutline.length / 2;
  const points = Array.from(edge.stationMm, (_, j) => {
    const i = (edge.from + j) % corners;
    const at = [piece.neutralOutline[2 * i], piece.neutralOutline[2 * i + 1]] as const;
    // The outline's own corner that belongs to this point: the one nearest to where its offset leads.
    let best = at;
    let least = Infinity;
    for (let k = 0; k < piece.outline.length; k += 2) {
      const away = Math.hypot(piece.outline[k] - at[0], piece.outline[k + 1] - at[1]);
      if (away < least) [least, best] = [away, [piece.outline[k], piece.outline[k + 1]]];
    }
    return best;
  }).slice(1, -1);
  const [first, last] = [points[0], points[points.length - 1]];
  const [dx, dy] = [last[0] - first[0], last[1] - first[1]];
  return Math.max(...points.map(([x, y]) => Math.abs(dx * (y - first[1]) - dy * (x - first[0])) / Math.hypot(dx, dy)));
}

const straightFindingsOf = ({ findings }: Outcome) => findings.filter(({ code }) => code === 'wish/straight-costs');

describe('an edge kept straight', () => {
  it('is straight on the line that is cut, although the bevel changes along the seam', async () => {
    const seam = longest('butt');
    const straight = await withStraight(seam);
    const before = base.pieces ?? [];
    for (const piece of straight.pieces ?? []) {
      if (!piece.edges.some((edge) => edge.seam === seam.id)) continue;
      const plain = before.find((candidate) => candidate.id === piece.id);
      expect(plain && bowOfCut(plain, seam.id)).toBeGreaterThan(1);
      expect(bowOfCut(piece, seam.id)).toBeLessThan(0.02);
    }
  });

  it('says what it costs where the sculpt does not allow it, and nothing where it does', async () => {
    const open = longest('open');
    const found = straightFindingsOf(await withStraight(open));
    expect(found).toHaveLength(1);
    expect(found[0].where.seam).toBe(open.id);
    expect(found[0].text).toMatch(/^The open edge of .* is to be straight, but turns by \d+° on the sculpt: /);
    expect(found[0].value).toBeGreaterThan(8);
    const short = (base.cut?.chains ?? []).filter(({ kind, vertices }) => kind === 'butt' && vertices.length === 3);
    expect(straightFindingsOf(await withStraight(short[0]))).toEqual([]);
  });
});
