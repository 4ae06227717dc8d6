/** Letters of a name at most: with four bytes to a letter and an ending it stays under the 255 bytes that systems allow. */
const MOST_LETTERS = 50;

/** Names that one system keeps for its devices, whatever ending stands behind (Microsoft, Naming Files, Paths, and Namespaces). */
const DEVICES = /^(con|prn|aux|nul|com[0-9\u00b9\u00b2\u00b3]|lpt[0-9\u00b9\u00b2\u00b3])$/i;

/**
 * Letters and figures of every script stay, an apostrophe goes without a trace, and what a system may refuse in a name becomes a dash: no way out of
 * the folder, no device, nothing hidden, nothing too long.
 */
export function fileNameOf(name: string): string {
  const plain = name
    .replace(/['\u2019]/g, '')
    .replace(/[^\p{L}\p{N}\p{M}]+/gu, '-')
    .replace(/^-/, '');
  const short = Array.from(plain).slice(0, MOST_LETTERS).join('').replace(/-$/, '');
  return DEVICES.test(short) ? `${short}-job` : short || 'job';
}
