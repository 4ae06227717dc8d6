import type { SeamChain } from '../model/seams.ts';
import { FIRST_SCORE, scoreSeam } from '../project/score-commands.ts';
import { SCORE_WORDS } from './score-words.ts';
import type { Verb } from './verbs.ts';
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
    const corners = [...vertices].map((v) => sculpt.fileVertex[v]);
    bench.setView({ choice: NOTHING });
    // In the order of the seam, so that the line is drawn in one stroke.
    bench.run(
      scoreSeam(
        corners.slice(1).map((corner, i) => [corners[i], corner]),
        FIRST_SCORE,
      ),
    );
  },
});
