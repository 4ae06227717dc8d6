import { VERDICT_SENTENCES } from '../../base/verdict.ts';
import { spoken } from '../language/spoken.ts';
import type { NextKind } from './next-step.ts';

const count = (n: number, one: string, many: string): string => `${n}\u00a0${n === 1 ? one : many}`;

/** Words of what is best done next, and of whether it will work. */
export const VERDICT_WORDS = spoken('verdict', {
  next: {
    open: () => 'open a sculpt',
    read: () => 'see why the file cannot be read',
    size: () => 'set the size',
    part: () => 'part it',
    take: () => 'take one of the proposals',
    foam: () => 'choose foam',
    sheets: () => 'make it fit the sheets',
    see: (n: number) => `see ${count(n, 'finding', 'findings')}`,
    wait: () => 'being worked out …',
    print: () => 'save the templates to print',
    changed: (n: number) => `save pages of ${count(n, 'piece', 'pieces')} anew`,
    tick: (n: number) => `tick off ${count(n, 'piece', 'pieces')} as printed`,
    cut: (n: number) => `cut ${count(n, 'piece', 'pieces')}`,
    glue: () => 'glue it',
    finish: (n: number) => `finish it: ${count(n, 'step', 'steps')} open`,
    done: () => 'All of it is done.',
  } satisfies Record<NextKind, (n: number) => string>,
  nextIs: (what: string) => `Next: ${what}`,
  nextLabel: 'What is best done next',

  heading: 'Will it work?',
  answer: VERDICT_SENTENCES,
  groups: { error: 'Stops', warning: 'Look', note: 'Note' },
  group: (name: string, n: number) => `${name}, ${n}`,
  wholeJob: 'whole job',
  piece: (name: string) => `piece ${name}`,
  seam: (letter: string) => `seam ${letter}`,
  page: (name: string) => `page ${name}`,
  checked: (good: number, all: number) =>
    good === all
      ? `${count(all, 'check', 'checks')}, all found good`
      : `${count(all, 'check', 'checks')}, ${good} found good`,
  good: 'good',
  notGood: 'not good',
  checks: {
    scale: (longest: string) => `True to scale: ${longest} along its longest side.`,
    seams: (difference: string) => `Both sides of every seam agree within ${difference}.`,
    gaps: (gap: string, overlap: string) => `Put together dry: gaps of at most ${gap}, overlaps of at most ${overlap}.`,
    stretch: (stretch: string, squash: string) => `The foam gives at most ${stretch} stretch and ${squash} squash.`,
    bends: (strain: string, radius: string) => `Tightest bend: ${radius}, skins strained by ${strain}.`,
    sheets: (sheets: number, pieces: number) =>
      `${count(sheets, 'sheet holds', 'sheets hold')} all ${count(pieces, 'piece', 'pieces')}.`,
    pages: (pages: number) => `${count(pages, 'page', 'pages')}, the scale square among them.`,
    twins: (n: string) => `${n} twins are marked as left or right.`,
    cautions: () => 'Cautions for cutting, heat and glue stand on the build sheet.',
  },

  ask: {
    question: (n: number) =>
      n === 1
        ? 'One thing stops it. Save the templates all the same?'
        : `${n} things stop it. Save the templates all the same?`,
    yes: 'save all the same',
    no: 'see what stops it',
  },
  verbs: { see: 'will it work? see all findings', anyway: 'save templates although something stops it' },

  standing: {
    missing: 'It waits for what comes before it.',
    before: 'what comes first',
    wrong: 'Something is wrong here.',
    see: 'see all findings',
  },
});
