import type { Outcome } from '../../src/pipeline/outcome.ts';
import { outcomeFaults } from './outcome-faults.ts';
import { Tally } from './tally.ts';

/** Time of the processor, which other work on the machine does not lengthen, ms. */
export const cpuMs = (): number => process.cpuUsage().user / 1000;

export const say = (text: string): void => void process.stdout.write(`${text}\n`);

/** Words `name=value` behind a command. */
export class Words {
  readonly #words = new Map(process.argv.slice(2).map((word) => word.split('=', 2) as [string, string]));

  has(name: string): boolean {
    return this.#words.has(name);
  }

  text(name: string, usual: string): string {
    return this.#words.get(name) ?? usual;
  }

  figure(name: string, usual: number): number {
    const value = Number(this.#words.get(name) ?? usual);
    if (!Number.isFinite(value)) throw new Error(`${name} is no number`);
    return value;
  }
}

/** Runs trials, holds what came of each against its promises, tells faults at once and figures at the end. */
export class Trials {
  readonly #tallies = new Map<string, Tally>();
  readonly #isLoud: boolean;
  #faulty = 0;
  #count = 0;

  /** @param isLoud  true where all that a trial comes to is told. */
  constructor(isLoud: boolean) {
    this.#isLoud = isLoud;
  }

  get faulty(): number {
    return this.#faulty;
  }

  /**
   * @param kind   under which it is counted.
   * @param which  the words that repeat it alone.
   * @param more   what else is held against its promises.
   */
  async run(
    kind: string,
    which: string,
    run: () => Promise<Outcome>,
    more: (outcome: Outcome) => Promise<readonly string[]> = () => Promise.resolve([]),
  ): Promise<void> {
    const tally = this.#tallies.get(kind) ?? new Tally(kind);
    this.#tallies.set(kind, tally);
    const start = cpuMs();
    let [ms, stop] = [NaN, 'thrown' as string | null];
    const [told, faults]: [string[], string[]] = [[], []];
    try {
      const outcome = await run();
      ms = cpuMs() - start;
      stop = outcome.stopped?.problem.code ?? null;
      told.push(...outcome.findings.map(({ code }) => code));
      faults.push(...outcomeFaults(outcome), ...(await more(outcome)));
      if (this.#isLoud) this.#tell(outcome);
    } catch (error) {
      faults.push(`thrown: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
    }
    tally.add(which, Number.isNaN(ms) ? cpuMs() - start : ms, stop, told);
    this.#count += 1;
    if (faults.length > 0) {
      this.#faulty += 1;
      const shown = faults.slice(0, this.#isLoud ? 100 : 3).join(' | ');
      say(`FAULT ${which} (${faults.length}): ${shown.slice(0, 2000)}`);
    }
    if (this.#count % 100 === 0)
      say(
        `… ${this.#count} runs, ${this.#faulty} at fault, ${(cpuMs() / this.#count).toFixed(0)} ms each, ${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MB`,
      );
  }

  /** Says what came of all. */
  finish(): void {
    const all = [...this.#tallies.values()];
    for (const tally of all) say(String(tally));
    const sum = (of: (tally: Tally) => number): number => all.reduce((total, tally) => total + of(tally), 0);
    const peak = (process.resourceUsage().maxRSS / 1024).toFixed(0);
    say(
      `${sum((t) => t.runs)} runs, ${sum((t) => t.made)} in pieces, ${this.#faulty} at fault, peak memory ${peak} MB`,
    );
    process.exitCode = this.#faulty > 0 ? 1 : 0;
  }

  #tell({ stopped, pieces, findings, paper }: Outcome): void {
    say(`stopped: ${stopped?.problem.text ?? 'no'}; ${pieces?.length ?? 0} pieces, ${paper?.pages.length ?? 0} pages`);
    for (const { code, text } of findings) say(`  ${code}: ${text}`);
  }
}
