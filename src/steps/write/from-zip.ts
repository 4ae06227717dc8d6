import { unzipSync } from 'fflate';

/** Unpacked at most, bytes: what claims to be larger is no project of ours. */
const MOST_BYTES = 1 << 29;

/** True where bytes begin as a zip does: with the local header of its first file (APPNOTE 4.3.7). */
export const isZip = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;

/** The first file in a zip whose name ends so; null where it holds none, or is damaged. */
export function fileFromZip(bytes: Uint8Array, ending: string): Uint8Array | null {
  let isFound = false;
  try {
    const found = unzipSync(bytes, {
      // Room is made for what a zip claims: for one file alone.
      filter: ({ name, originalSize }) => {
        if (isFound || !name.endsWith(ending) || originalSize > MOST_BYTES) return false;
        isFound = true;
        return true;
      },
    });
    return Object.values(found).at(0) ?? null;
  } catch {
    return null;
  }
}
