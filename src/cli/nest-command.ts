import { nestReport } from '../pipeline/nest-report.ts';
import { NEST_HANDS, nestTogether, type NestState } from '../pipeline/nest-crew.ts';
import { readStripTask } from '../pipeline/nest-instance.ts';
import { stripOutcome } from '../pipeline/nest-strip.ts';
import { Refused } from './exit.ts';
import type { NestChoices } from './nest-options.ts';
import { ThreadHand } from './nest-threads.ts';
import { writeEach } from './output-folder.ts';
import { checkFile } from './output-place.ts';
import { readInput } from './read-input.ts';

/**
 * `nest INSTANCE.json`: lays pieces on a strip as short as it can until the time is up, the moves are made or the maker interrupts.
 * @param tell  gets a line for each improvement while it goes on.
 * @returns the lines that sum it up.
 */
export async function nestCommand(choices: NestChoices, tell: (line: string) => void): Promise<string> {
  const { input, out, end, seed } = choices;
  const file = await readInput(input);
  if (out !== undefined) await checkFile({ path: out, option: '--out' }, [input]);
  const read = readStripTask(new TextDecoder().decode(file.bytes));
  if (!read.ok) throw Refused.from(read.problem, file.name);
  const task = read.value;
  const stop = new Int32Array(new SharedArrayBuffer(4));
  const endMs = 'seconds' in end ? performance.timeOrigin + 1000 * end.seconds : Infinity;
  const isOver = (): boolean => Atomics.load(stop, 0) === 1 || performance.timeOrigin + performance.now() >= endMs;
  const onStop = (): void => void Atomics.store(stop, 0, 1);
  process.once('SIGINT', onStop);
  const hands = Array.from({ length: NEST_HANDS }, (_, i) => new ThreadHand(task, seed, i, stop, endMs));
  try {
    const told = ({ moves, best }: NestState): void => {
      const time = 'moves' in end ? '' : `${(performance.now() / 1000).toFixed(2)} s, `;
      tell(`${time}${moves} moves: ${percent(stripOutcome(task, best).density)}\n`);
    };
    const state = await nestTogether(hands, 'moves' in end ? end.moves : Infinity, isOver, told);
    const outcome = stripOutcome(task, state.best);
    if (out !== undefined)
      await writeEach(new Map([[out, `${JSON.stringify(nestReport(task, outcome, state.moves, seed))}\n`]]));
    return [
      `density ${percent(outcome.density)}`,
      `length ${outcome.length} of a strip ${task.height} high, ${outcome.places.length} pieces, ${state.moves} moves${out === undefined ? '' : `, written to ${out}`}`,
      '',
    ].join('\n');
  } finally {
    process.removeListener('SIGINT', onStop);
    for (const hand of hands) hand.end();
  }
}

const percent = (share: number): string => `${(100 * share).toFixed(2)} %`;
