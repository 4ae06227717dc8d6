import { setSeams } from '../project/commands.ts';
import type { ProposalAnswer, ProposalAsk, ProposalKind } from '../worker/proposing-api.ts';
import { hasMarks } from './edge-facts.ts';
import { PROPOSE_WORDS } from './propose-words.ts';
import { limitsOnBench } from './sheet-on-bench.ts';
import type { Verb } from './verb.ts';
import type { Proposals } from './view-state.ts';
import type { Workbench } from './workbench.ts';

/** The three answers in the order they stand side by side. */
export const kindsOf = ({ from }: Pick<Proposals, 'from'>): readonly ProposalKind[] =>
  from === 'ease' ? ['first', 'second', 'third'] : ['few', 'between', 'simple'];

/** Per cent a proposal may ask of the foam: as the maker says, else what the foam can take. */
export const proposalLimit = ({ view, project }: Pick<Workbench, 'view' | 'project'>): number =>
  view.proposalPct ?? limitsOnBench(project, 1).tooMuchPct;

/** Begins to look for seams; what was found before is put away. */
export async function beginProposing(bench: Workbench, from: ProposalAsk['from']): Promise<void> {
  const { isOurs, take } = beginSearch(bench, from, PROPOSE_WORDS.spoken.begun);
  const result = await bench.workshop.propose({ from, limitPct: proposalLimit(bench) }, (answer) => {
    if (take(answer) === 'first') bench.say(PROPOSE_WORDS.spoken.first(answer.pieces));
  });
  if (!isOurs()) return;
  if (!result.ok) {
    bench.setView({ proposals: null });
    return bench.showProblem(result.problem);
  }
  const { proposals: last } = bench.view;
  if (last !== null) bench.setView({ proposals: { ...last, state: 'done' } });
  bench.say(PROPOSE_WORDS.spoken.done);
}

/** Seeks the least that brings one piece under its limits, at the three best places; all other pieces and all seams stay. */
export async function easePiece(bench: Workbench, patch: number): Promise<void> {
  const words = PROPOSE_WORDS.easing;
  const { isOurs, take } = beginSearch(bench, 'ease', words.begun);
  const result = await bench.workshop.ease({ patch, limitPct: proposalLimit(bench) }, take);
  const { proposals: last } = bench.view;
  if (!isOurs() || last === null) return;
  if (!result.ok) {
    bench.setView({ proposals: null });
    return bench.showProblem(result.problem);
  }
  const isStopped = last.state === 'stopping' && result.value.length === 0;
  bench.setView({ proposals: { ...last, state: 'done', ...(isStopped ? {} : { why: result.value }) } });
  bench.say(easeSaid(result.value.length, Object.keys(last.answers).length, isStopped));
}

/** What is said of a piece that breaks so many limits and for which so many places were found. */
export function easeSaid(broken: number, places: number, isStopped: boolean): string {
  const words = PROPOSE_WORDS.easing;
  if (places > 0) return words.spoken(places);
  if (isStopped) return words.stopped;
  return broken === 0 ? words.keeps : words.none;
}

/** Puts what was found before away; answers are taken as long as the search is the one on the bench. */
function beginSearch(
  bench: Workbench,
  from: Proposals['from'],
  said: string,
): { readonly isOurs: () => boolean; readonly take: (answer: ProposalAnswer) => 'first' | 'next' | null } {
  const answers: Proposals['answers'] = {};
  bench.setView({ proposals: { state: 'looking', from, answers }, preview: null });
  bench.say(said);
  const { sculpt } = bench.bench;
  const isOurs = (): boolean => bench.view.proposals?.from === from && bench.bench.sculpt === sculpt;
  const take = (answer: ProposalAnswer): 'first' | 'next' | null => {
    const { proposals: now } = bench.view;
    if (now === null || !isOurs()) return null;
    bench.setView({ proposals: { ...now, answers: { ...now.answers, [answer.kind]: answer } } });
    return Object.keys(now.answers).length === 0 ? 'first' : 'next';
  };
  return { isOurs, take };
}

/** Answers that are one and the same, together; none where all differ. */
export function alikeAnswers(
  kinds: readonly ProposalKind[],
  answers: Proposals['answers'],
): readonly (readonly ProposalKind[])[] {
  const groups = new Map<string, ProposalKind[]>();
  for (const kind of kinds) {
    const answer = answers[kind];
    if (answer === undefined) continue;
    const pairs = answer.pairs.map(([a, b]) => (a < b ? `${a} ${b}` : `${b} ${a}`)).sort();
    const key = `${pairs.join()} ${JSON.stringify(answer.paths)}`;
    groups.set(key, [...(groups.get(key) ?? []), kind]);
  }
  return [...groups.values()].filter((group) => group.length > 1);
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
  if (answer === undefined) return;
  stopProposing(bench);
  bench.setView({ preview: null, tool: 'choose', choice: { kind: 'nothing' } });
  bench.run({ ...setSeams({ edges: answer.pairs, paths: answer.paths }), label: PROPOSE_WORDS.taken });
  bench.say(PROPOSE_WORDS.spoken.taken);
}

/** What can be done about a piece that asks too much of its foam. */
export function easeVerbs(bench: Workbench, patch: number): Verb[] {
  if (bench.view.proposals?.state === 'looking') return [];
  const run = () => void easePiece(bench, patch);
  return [{ id: 'ease', label: PROPOSE_WORDS.verbs.ease, key: 'm', isNear: true, run }];
}

/** What can be done about proposals now. */
export function proposeVerbs(bench: Workbench): Verb[] {
  const { sculpt } = bench.bench;
  if (sculpt?.mmPerUnit == null) return [];
  const { proposals } = bench.view;
  const words = PROPOSE_WORDS.verbs;
  const hasSeams = hasMarks(bench.part);
  const begin: Verb[] = [
    { id: 'propose', label: words.propose, key: 'm', run: () => void beginProposing(bench, 'anew') },
    ...(hasSeams ? [{ id: 'propose-rest', label: words.rest, run: () => void beginProposing(bench, 'rest') }] : []),
  ];
  return [
    ...(proposals?.state === 'looking'
      ? [{ id: 'stop-proposing', label: words.stop, key: 'm', isOn: true, run: () => stopProposing(bench) }]
      : begin),
    ...(proposals === null ? [] : kindsOf(proposals))
      .filter((kind) => proposals?.answers[kind] !== undefined)
      .map((kind) => ({
        id: `take-${kind}`,
        label: words.take(kind),
        run: () => takeProposal(bench, kind),
      })),
    ...(proposals === null
      ? []
      : [{ id: 'put-proposals', label: PROPOSE_WORDS.put.toLowerCase(), run: () => putProposalsAway(bench) }]),
  ];
}
