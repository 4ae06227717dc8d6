import type { Workbench } from './workbench.ts';
import { WORDS } from './words.ts';

/**
 * Tells that the worker has not been heard for long, with the way out; and takes that back when it is heard again.
 * @param restart  ends the worker; the next question starts another.
 */
export function tellSilence(bench: Workbench, isSilent: boolean, restart: () => void): void {
  const { silent, afresh } = WORDS.notice;
  if (!isSilent) {
    if (bench.notice?.text === silent) bench.setNotice(null);
    return;
  }
  const begin = (): void => {
    restart();
    bench.setNotice(null);
    void bench.compute();
  };
  bench.setNotice({ tone: 'problem', text: silent, remedy: { label: afresh, run: begin } });
}
