import type { PullWay, SeamPull } from '../../model/springing.ts';
import type { BorderLoad, BorderLoads } from './border-loads.ts';

/** One side of a seam: its vertices in the piece, from one end to the other, and the loads of that piece's border. */
export interface PullSide {
  readonly vertices: ArrayLike<number>;
  readonly loads: BorderLoads;
  /** Per vertex of the piece how far it stands off when the piece is let go, mm. */
  readonly standOff: ArrayLike<number>;
  readonly thicknessMm: number;
}

/** What a seam carries where it carries most. @param sides at least one, each of at least one edge. */
export function seamPull(seam: Pick<SeamPull, 'seam' | 'letter'>, sides: readonly PullSide[]): SeamPull {
  const pulls = sides.map((side) => mostPulled(side));
  const most = pulls.reduce((worst, pull) => (pull.pullNPerMm > worst.pullNPerMm ? pull : worst));
  const opensMm = sides.reduce(
    (farthest, { vertices, standOff }) => Array.from(vertices).reduce((far, v) => Math.max(far, standOff[v]), farthest),
    0,
  );
  return { ...seam, ...most, opensMm };
}

/** The most pulled first; seams pulled alike in the order given. */
export const byPull = (pulls: readonly SeamPull[]): readonly SeamPull[] =>
  pulls.toSorted((a, b) => b.pullNPerMm - a.pullNPerMm);

type Pull = Omit<SeamPull, 'seam' | 'letter' | 'opensMm'>;

/** Glue and foam even out what is finer than the foam is thick, and so does a window of that length. */
function mostPulled({ vertices, loads, thicknessMm }: PullSide): Pull {
  const edges = Array.from({ length: vertices.length - 1 }, (_, i) => loads(vertices[i], vertices[i + 1]));
  let most: Pull | null = null;
  for (let i = 0; i < edges.length; i += 1) {
    const { x, y, z } = edges[i].middle;
    const pull = pullOf(windowRound(edges, i, thicknessMm), thicknessMm, [x, y, z]);
    if (most === null || pull.pullNPerMm > most.pullNPerMm) most = pull;
  }
  if (most === null) throw new RangeError('mostPulled: a seam without an edge');
  return most;
}

/** @returns the way of the greatest of the four; of equal ones the first. */
function greatestWay(atSkin: number, across: number, along: number, out: number): PullWay {
  const ways: readonly (readonly [PullWay, number])[] = [
    [atSkin < 0 ? 'opensBack' : 'opensFace', Math.abs(atSkin)],
    ['apart', across],
    ['slides', Math.abs(along)],
    ['lifts', Math.abs(out)],
  ];
  return ways.reduce((most, way) => (way[1] > most[1] ? way : most))[0];
}

function windowRound(edges: readonly BorderLoad[], middle: number, length: number): readonly BorderLoad[] {
  let [from, to, sum] = [middle, middle + 1, edges[middle].lengthMm];
  while (sum < length && (from > 0 || to < edges.length)) {
    if (from > 0) {
      from -= 1;
      sum += edges[from].lengthMm;
    }
    if (to < edges.length) {
      sum += edges[to].lengthMm;
      to += 1;
    }
  }
  return edges.slice(from, to);
}

function pullOf(edges: readonly BorderLoad[], thicknessMm: number, at: Pull['at']): Pull {
  const total = edges.reduce((sum, edge) => sum + edge.lengthMm, 0);
  const mean = (of: (edge: BorderLoad) => number): number =>
    edges.reduce((sum, edge) => sum + edge.lengthMm * of(edge), 0) / total;
  const [across, along, out] = [mean((e) => e.across), mean((e) => e.along), mean((e) => e.out)];
  const moment = mean((e) => e.moment);
  const atSkin = (6 * moment) / thicknessMm;
  return {
    pullNPerMm: Math.hypot(Math.max(0, across), along, out) + Math.abs(atSkin),
    way: greatestWay(atSkin, across, along, out),
    acrossNPerMm: across,
    shearNPerMm: Math.abs(along),
    peelNPerMm: Math.abs(out),
    momentN: moment,
    at,
  };
}
