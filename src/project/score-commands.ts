import type { ScoredLine } from '../model/score.ts';
import { edgeKey, onSculpt, type Command, type EdgePair } from './commands.ts';
import { edgesAndPaths } from './path-names.ts';
import type { SculptPart } from './project.ts';

/** A first guess until the maker has scored a scrap, mm: half of 6 mm foam, and as wide as a line is seen from across a room. */
export const FIRST_SCORE = { depthMm: 3, openMm: 2 };

/**
 * Makes of a seam a slit in the face: the foam stays joined along it and is scored there.
 * @param pairs edges of the seam in the order of the line, file numbers; paths are passed over. None: nothing changes.
 */
export const scoreSeam = (pairs: readonly EdgePair[], sizes: Pick<ScoredLine, 'depthMm' | 'openMm'>): Command =>
  onSculpt('score along the seam', (part) => {
    const { edges } = edgesAndPaths(pairs);
    if (edges.length === 0) return part;
    const gone = new Set(edges.map(edgeKey));
    const seams = { ...part.seams, edges: part.seams.edges.filter((pair) => !gone.has(edgeKey(pair))) };
    const scores = part.scores ?? [];
    return { ...part, seams, scores: [...scores, { id: freeScoreId(scores), edges, ...sizes }] };
  });

/** Parts the foam along a scored line: it becomes a seam. */
export const partScore = (id: string): Command =>
  onSculpt('part along the scored line', (part) => {
    const line = part.scores?.find((score) => score.id === id);
    if (line === undefined) return part;
    const known = new Set(part.seams.edges.map(edgeKey));
    const added = line.edges.filter((pair) => !known.has(edgeKey(pair)));
    return { ...without(part, id), seams: { ...part.seams, edges: [...part.seams.edges, ...added] } };
  });

export const removeScore = (id: string): Command =>
  onSculpt('take a scored line away', (part) =>
    part.scores?.some((score) => score.id === id) === true ? without(part, id) : part,
  );

/** How deep a line is scored and how wide it opens, mm; depth over 0. */
export const setScore = (id: string, sizes: Partial<Pick<ScoredLine, 'depthMm' | 'openMm'>>): Command =>
  onSculpt(
    'change a scored line',
    (part) => {
      const line = part.scores?.find((score) => score.id === id);
      if (line === undefined) return part;
      const next = { ...line, ...sizes };
      if (next.depthMm === line.depthMm && next.openMm === line.openMm) return part;
      return { ...part, scores: part.scores?.map((score) => (score === line ? next : score)) };
    },
    `score ${id} ${Object.keys(sizes).join(' ')}`,
  );

function without(part: SculptPart, id: string): SculptPart {
  const { scores = [], ...rest } = part;
  const kept = scores.filter((score) => score.id !== id);
  return kept.length === 0 ? rest : { ...rest, scores: kept };
}

/** `score-1`, `score-2` …: the first that is free. */
function freeScoreId(scores: readonly ScoredLine[]): string {
  for (let i = 1; ; i += 1) if (!scores.some(({ id }) => id === `score-${i}`)) return `score-${i}`;
}
