/** Tries at most. */
const MOST_TRIES = 3000;

/**
 * An input made smaller as long as its fault stays: parts left out, halves first.
 * @param fails  true where the fault is still there.
 */
export async function shrunk(bytes: Uint8Array, fails: (bytes: Uint8Array) => Promise<boolean>): Promise<Uint8Array> {
  let now = bytes;
  let tries = 0;
  for (let size = 2 ** Math.floor(Math.log2(Math.max(1, now.length))); size >= 1; size /= 2) {
    for (let at = 0; at + size <= now.length && tries < MOST_TRIES; tries += 1) {
      const less = new Uint8Array(now.length - size);
      less.set(now.subarray(0, at));
      less.set(now.subarray(at + size), at);
      if (await fails(less)) now = less;
      else at += size;
    }
  }
  return now;
}
