/** Letters and figures of every script stay, an apostrophe goes without a trace, and what a system may refuse in a name becomes a dash. */
export const fileNameOf = (name: string): string =>
  name
    .replace(/['\u2019]/g, '')
    .replace(/[^\p{L}\p{N}\p{M}]+/gu, '-')
    .replace(/^-|-$/g, '') || 'job';
