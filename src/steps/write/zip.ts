import { Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import type { Stepwise } from '../../base/stepwise.ts';

/** Endings of files that are packed already: packing them once more takes time and saves nothing. */
const PACKED = /\.(png|pdf|zip)$/;

/** Packed in one go at most, bytes: some milliseconds of work. */
const PART_BYTES = 1 << 19;

/**
 * Several files as one zip (APPNOTE 6.3, deflate or stored), in the order given. Names are as they are, without folders.
 * @param date `YYYY-MM-DD`, which every file in it carries: the same files and date give the same bytes.
 */
export function* zipSteps(files: ReadonlyMap<string, Uint8Array | string>, date: string): Stepwise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  const zip = new Zip((error, chunk) => {
    if (error !== null) throw error;
    chunks.push(chunk);
  });
  const mtime = middayOf(date);
  for (const [name, content] of files) {
    const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
    const entry = PACKED.test(name) ? new ZipPassThrough(name) : new ZipDeflate(name, { level: 6 });
    entry.mtime = mtime;
    zip.add(entry);
    for (let at = 0; at === 0 || at < bytes.length; at += PART_BYTES) {
      const end = at + PART_BYTES;
      entry.push(bytes.slice(at, end), end >= bytes.length);
      yield;
    }
  }
  zip.end();
  const whole = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

/** Zip keeps the time of day as the clock on the wall shows it; noon, so that a reader elsewhere sees the same day. */
function middayOf(date: string): Date {
  const [year, month, day] = date.split('-').map(Number);
  return new Date(year, month - 1, day, 12);
}
