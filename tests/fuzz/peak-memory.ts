import { openSync, readSync } from 'node:fs';

const text = Buffer.alloc(4096);
let status: number | null = null;

/** The most memory this process has had in hand since it began, MB: as the system counts it, else as Node does, which counts the mother process in. */
export function peakMb(): number {
  if (process.platform !== 'linux') return process.resourceUsage().maxRSS / 1024;
  status ??= openSync('/proc/self/status', 'r');
  const length = readSync(status, text, 0, text.length, 0);
  const found = /VmHWM:\s*(\d+) kB/.exec(text.toString('latin1', 0, length));
  return found === null ? 0 : Number(found[1]) / 1024;
}
