import type { SculptView } from '../model/bench-view.ts';
import type { SeamChain } from '../model/seams.ts';
import type { EdgePair } from '../project/commands.ts';
import { FIRST_SCORE, scoreSeam } from '../project/score-commands.ts';
import { edgeIndexOf, filePairs } from './edge-index.ts';
import { SCORE_WORDS } from './score-words.ts';
import type { Verb } from './verb.ts';
import { NOTHING } from './view-state.ts';
import type { Workbench } from './workbench.ts';

/** Makes a scored line of a seam: the foam is cut into there, not through. */
export const scoreVerb = (bench: Workbench, { vertices }: SeamChain): Verb => ({
  id: 'score',
  label: SCORE_WORDS.verb,
  key: 'x',
  isNear: true,
  run: () => {
    const { sculpt } = bench.bench;
    if (sculpt === null) return;
    bench.setView({ choice: NOTHING });
    bench.run(scoreSeam(pairsAlong(sculpt, vertices), FIRST_SCORE));
  },
});

/** Edges of the file in the order and direction of the seam, so that the line is drawn in one stroke. */
function pairsAlong(sculpt: SculptView, vertices: Uint32Array): readonly EdgePair[] {
  const pairs = filePairs(sculpt, edgeIndexOf(sculpt).along(vertices));
  // Each edge is named from either end: it begins where the last one ended.
  return pairs.map((pair, i): EdgePair => {
    const next = pairs[i + 1] ?? [];
    const before = pairs[i - 1] ?? [];
    const isTurned =
      i + 1 < pairs.length ? next.includes(pair[0]) && !next.includes(pair[1]) : before.includes(pair[1]);
    return isTurned ? [pair[1], pair[0]] : pair;
  });
}
