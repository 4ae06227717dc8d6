import { setSeams } from '../project/commands.ts';
import type { ProposalAnswer, ProposalAsk, ProposalKind } from '../worker/proposing-api.ts';
import { PROPOSE_WORDS } from './propose-words.ts';
import { limitsOnBench } from './sheet-on-bench.ts';
import type { Verb } from './verbs.ts';
import type { Workbench } from './workbench.ts';

/** The three kinds in the order they stand side by side. */
export const PROPOSAL_KINDS = ['few', 'between', 'simple'] as const satisfies readonly ProposalKind[];

/** Per cent a proposal may ask of the foam: as the maker says, else what the foam can take. */
export const proposalLimit = ({ view, project }: Pick<Workbench, 'view' | 'project'>): number =>
  view.proposalPct ?? limitsOnBench(project, 1).tooMuchPct;

/** Begins to look for seams; what was found before is put away. */
export async function beginProposing(bench: Workbench, from: ProposalAsk['from'], only?: number): Promise<void> {
  const proposals = { state: 'looking', from, answers: {} } as const;
  bench.setView({ proposals, preview: null });
  bench.say(PROPOSE_WORDS.spoken.begun);
  const { sculpt } = bench.bench;
  const isOurs = (): boolean => bench.view.proposals !== null && bench.bench.sculpt === sculpt;
  const take = (answer: ProposalAnswer): void => {
    const { proposals: now } = bench.view;
    if (now === null || !isOurs()) return;
    if (Object.keys(now.answers).length === 0) bench.say(PROPOSE_WORDS.spoken.first(answer.pieces));
    bench.setView({ proposals: { ...now, answers: { ...now.answers, [answer.kind]: answer } } });
  };
  const result = await bench.workshop.propose(
    { from, limitPct: proposalLimit(bench), ...(only === undefined ? {} : { only }) },
    take,
  );
  if (!isOurs()) return;
  if (!result.ok) {
    bench.setView({ proposals: null });
    return bench.showProblem(result.problem);
  }
  const { proposals: last } = bench.view;
  if (last !== null) bench.setView({ proposals: { ...last, state: 'done' } });
  bench.say(PROPOSE_WORDS.spoken.done);
}

/** Ends the search; the answers stand. */
export function stopProposing(bench: Workbench): void {
  const { proposals } = bench.view;
  if (proposals?.state !== 'looking') return;
  bench.setView({ proposals: { ...proposals, state: 'stopping' } });
  void bench.workshop.stopProposing();
}

/** Puts the answers away, and ends the search if it still goes on. */
export function putProposalsAway(bench: Workbench): void {
  stopProposing(bench);
  bench.setView({ proposals: null, preview: null });
}

/** Makes the seams of one answer those of the job, as one change. The others stay beside it. */
export function takeProposal(bench: Workbench, kind: ProposalKind): void {
  const { proposals } = bench.view;
  const answer = proposals?.answers[kind];
  const paths = proposals?.from === 'rest' ? (bench.part?.seams.paths ?? []) : [];
  if (answer === undefined) return;
  stopProposing(bench);
  bench.setView({ preview: null, tool: 'choose', choice: { kind: 'nothing' } });
  bench.run({ ...setSeams({ edges: answer.pairs, paths }), label: PROPOSE_WORDS.taken });
  bench.say(PROPOSE_WORDS.spoken.taken);
}

/** Seeks the least that brings one piece under the limit: all other pieces and all seams stay. */
export function easeVerbs(bench: Workbench, patch: number): Verb[] {
  if (bench.view.proposals?.state === 'looking') return [];
  const run = () => void beginProposing(bench, 'rest', patch);
  return [{ id: 'ease', label: PROPOSE_WORDS.verbs.ease, key: 'm', isNear: true, run }];
}

/** What can be done about proposals now. */
export function proposeVerbs(bench: Workbench): Verb[] {
  const { sculpt } = bench.bench;
  if (sculpt?.mmPerUnit == null) return [];
  const { proposals } = bench.view;
  const words = PROPOSE_WORDS.verbs;
  const hasSeams = (bench.part?.seams.edges.length ?? 0) > 0;
  const begin: Verb[] = [
    { id: 'propose', label: words.propose, key: 'm', run: () => void beginProposing(bench, 'anew') },
    ...(hasSeams ? [{ id: 'propose-rest', label: words.rest, run: () => void beginProposing(bench, 'rest') }] : []),
  ];
  return [
    ...(proposals?.state === 'looking'
      ? [{ id: 'stop-proposing', label: words.stop, key: 'm', isOn: true, run: () => stopProposing(bench) }]
      : begin),
    ...PROPOSAL_KINDS.filter((kind) => proposals?.answers[kind] !== undefined).map((kind) => ({
      id: `take-${kind}`,
      label: words.take(kind),
      run: () => takeProposal(bench, kind),
    })),
    ...(proposals === null
      ? []
      : [{ id: 'put-proposals', label: PROPOSE_WORDS.put.toLowerCase(), run: () => putProposalsAway(bench) }]),
  ];
}
