import type { HiddenSide } from '../model/hidden-side.ts';
import type { LimitName, ProposalKind } from '../worker/proposing-api.ts';
import { spoken } from './language/spoken.ts';

const KINDS: Readonly<Record<ProposalKind, string>> = {
  few: 'Few pieces',
  between: 'Between',
  simple: 'Simple pieces',
  first: 'Best place',
  second: 'Second place',
  third: 'Third place',
};

const LIMITS: Readonly<Record<LimitName, string>> = {
  stretch: 'stretch',
  squash: 'squash',
  overlap: 'lying over itself',
  sheet: 'too large',
  width: 'too narrow',
  cut: 'no edge',
  bend: 'bend',
};

/** What the window says of seams that are found by search. */
export const PROPOSE_WORDS = spoken('propose', {
  kinds: KINDS,
  verbs: {
    propose: 'propose seams',
    rest: 'propose the rest',
    ease: 'ease this piece',
    stop: 'stop looking for seams',
    take: (kind: ProposalKind) => `take the proposal: ${KINDS[kind].toLowerCase()}`,
  },
  begin: 'Propose seams',
  rest: 'Propose the rest',
  restWhy: 'What is marked stays; what is missing is added.',
  limit: 'Stretch at most',
  limitLabel: 'Greatest stretch and squash that a proposal may ask of the foam, per cent',
  hide: 'Hide seams',
  hideLabel: 'Side that is seen least: seams cost less there, as seen from the front',
  sides: {
    nowhere: 'nowhere in particular',
    back: 'at the back',
    under: 'underneath',
    left: 'on the left',
    right: 'on the right',
  } satisfies Record<HiddenSide | 'nowhere', string>,
  stop: 'Stop',
  put: 'Put away',
  caption: 'Three proposals side by side. Point at one to see its seams on the sculpt.',
  looking: 'Looking for seams …',
  better: 'They go on getting better until you stop.',
  working: 'Working out sheets and pages …',
  done: 'Point at one to see its seams on the sculpt.',
  rows: {
    pieces: 'Pieces',
    darts: 'Darts',
    length: 'Seams',
    stretch: 'Stretch',
    squash: 'Squash',
    foam: 'Foam',
    sheets: 'Sheets',
    pages: 'Pages',
  },
  /** Of places to ease one piece. */
  easing: {
    begun: 'Looking for the least cut …',
    caption: 'Places to ease the piece, the least costly first. Point at one to see its cut on the sculpt.',
    why: 'The piece breaks a limit:',
    rows: { pieces: 'Falls into', darts: 'New darts', length: 'New seam' },
    mends: 'Mends',
    limits: (names: readonly LimitName[]) => names.map((name) => LIMITS[name]).join(', '),
    none: 'No seam or dart brings it under the limit. Allow more stretch, take thinner foam, or let go of seams that are held.',
    keeps: 'The piece keeps every limit.',
    stopped: 'Stopped before anything was found.',
    done: 'Point at one to see its cut on the sculpt.',
    spoken: (n: number) =>
      n === 1 ? 'One place to ease the piece is found.' : `${n} places to ease the piece are found.`,
  },
  same: (names: readonly string[]) =>
    `${names.slice(0, -1).join(', ')} and ${names.at(-1)} are the same seams: nothing better was found between them.`,
  unknown: '…',
  take: 'Take it',
  picture: (kind: ProposalKind, pieces: number) => `${KINDS[kind]}: ${pieces} flat pieces beside each other`,
  broken: 'Breaks a limit',
  bent: 'Bends tightly',
  all: 'all three',
  taken: 'take a proposal',
  costs: {
    verb: 'what would it cost to join each seam?',
    stopVerb: 'stop working out what joining costs',
    ask: 'What would it cost to join each seam?',
    known: (n: number, of: number) => `${n} of ${of} seams`,
    seam: 'Seam',
    joins: 'Joins',
    saves: 'Saves',
    choose: (letter: string) => `Choose seam ${letter}`,
    closes: (piece: number) => `${piece} to itself`,
    faults: {
      notFlat: 'cannot be laid flat then',
      overlaps: 'lies over itself then',
      sheet: 'larger than the sheet then',
      limit: 'more than the foam takes',
    },
    said: (n: number) =>
      n === 0 ? 'No seam can be joined within the limits.' : `${n} can be joined within the limits.`,
  },
  spoken: {
    begun: 'Looking for seams.',
    first: (pieces: number) => `A first proposal of ${pieces} pieces is there.`,
    done: 'Stopped. Three proposals stand side by side.',
    taken: 'The proposal is taken. Undo brings the seams back as they were.',
  },
});
