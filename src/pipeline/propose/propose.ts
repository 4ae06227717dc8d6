import { seededRandom } from '../../base/random.ts';
import type { Work } from '../../base/work.ts';
import { firstAnswer } from './first-answer.ts';
import { Assessor, type Layout } from './layout.ts';
import { assessorOf } from './assessor-of.ts';
import { proposalOf } from './proposal-of.ts';
import type { Proposal, ProposalWish } from './proposal.ts';
import { Judge } from './judge.ts';
import { TimeUp, workUntil } from './time-up.ts';
import { Search } from './search.ts';

/**
 * Seeks seams under which every piece keeps its limits and which cost little: a feasible first answer, then better ones until told to stop.
 * The same wish, seed and number of moves give the same answer on every machine.
 * @param onBetter  called with each answer that is better than all before; all pieces that may change hold every limit.
 * @param until     asked between moves: true to stop. Time comes in here and in `isLate` alone.
 * @param isLate    asked in the midst of a move too: true to drop it, once there is an answer.
 * @returns the best answer; where none holds every limit, the nearest with its reasons.
 * @throws Cancelled when the work was called off.
 */
export async function propose(
  wish: ProposalWish,
  work: Work,
  onBetter: (proposal: Proposal) => void,
  until: () => boolean,
  isLate: () => boolean = () => false,
): Promise<Proposal> {
  const hurried = workUntil(work, isLate);
  const assessor = assessorOf(wish, hurried);
  await work.pause(0, 'looking for seams');
  const search = new Search(
    assessor,
    seededRandom(wish.seed),
    { until, onBetter: (layout, moves) => onBetter(proposalOf(assessor, layout, moves)) },
    hurried,
  );
  const found = await inTime(async () => search.run(await firstAnswer({ wish, assessor, search, until })));
  const last = found ?? search.best ?? assessor.nearest;
  if (last === null) throw new Error('a start is always assessed');
  const whole = new Assessor(assessor.graph, new Judge(wish, work), wish);
  return proposalOf(assessor, search.best === last ? last : await whole.confirm(last), search.moves);
}

/** @returns null where time was up before it ended. */
async function inTime(job: () => Promise<Layout>): Promise<Layout | null> {
  try {
    return await job();
  } catch (error) {
    if (error instanceof TimeUp) return null;
    throw error;
  }
}
