import type { Work } from '../base/work.ts';

/** How often the line is drawn anew, ms. */
const REDRAW_MS = 100;

/** Progress on one line of a terminal; silent when stderr is none. */
export function terminalWork(): Work & { clear(): void } {
  const { stderr } = process;
  let last = 0;
  let text = '';
  let drawn = false;
  return {
    pause(done, nextText) {
      text = nextText ?? text;
      const now = performance.now();
      if (stderr.isTTY && now - last > REDRAW_MS) {
        last = now;
        drawn = true;
        stderr.write(`\r\u001b[K${String(Math.floor(done * 100)).padStart(3)} % ${text}`);
      }
      return undefined;
    },
    clear() {
      if (drawn) stderr.write('\r\u001b[K');
    },
  };
}
