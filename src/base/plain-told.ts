/** What the core says as a maker reads it: the remedy stands beside a finding as a button, so its name in brackets is left out; a vertex is a corner. */
export const plainTold = (text: string): string =>
  text
    .replace(/\s*\(repair: [^)]*\)/g, '')
    .replace(/\bvertices\b/g, 'corners')
    .replace(/\bvertex\b/g, 'corner');
