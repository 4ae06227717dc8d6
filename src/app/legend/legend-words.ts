import type { LengthUnit } from '../../base/format-length.ts';
import type { Colouring } from '../../viewport/bench-contract.ts';
import { spoken } from '../language/spoken.ts';
import type { FigureKind } from './figures.ts';

/** Words of what colours show: the choice, the scale with its figures, and the table of the same figures. */
export const LEGEND_WORDS = spoken('legend', {
  choice: 'What colours show',
  kinds: {
    plain: 'bare foam',
    stretch: 'stretch',
    bend: 'bend',
    room: 'room round the core',
    pull: 'pull on seams',
    fit: 'gaps',
    pieces: 'each piece',
    paint: 'paint',
  } satisfies Record<Colouring, string>,
  show: {
    plain: 'colours: bare foam',
    stretch: 'colours: stretch by place',
    bend: 'colours: bend by place',
    room: 'colours: room round the core',
    pull: 'colours: pull on seams',
    fit: 'colours: gaps of the dry fit',
    pieces: 'colours: each piece in its own',
    paint: 'colours: as it will be painted',
  } satisfies Record<Colouring, string>,
  next: 'colours: the next kind',
  how: {
    stretch: 'How much longer or shorter the foam must become at each place.',
    bend: 'How far bending alone strains the skins of the foam; tighter is more.',
    room: 'How much room there is between the inside of the foam and the core: a plus where there is room, a minus where the core is in the foam.',
    pull: 'What each joint carries when cold foam is bent and held: warm or tape the strong ones first. The limit is what foam pulls that is bent as far as it may be.',
    fit: 'Where finished edges leave air (whole line) or press into each other (broken line), on face and back.',
  } satisfies Record<FigureKind, string>,

  title: {
    stretch: () => 'Stretch and squash, %',
    bend: () => 'Strain of the skins by bending, %',
    room: (unit: LengthUnit) => `Room round the core, ${unit}`,
    pull: () => 'Pull on seams, N/cm',
    fit: (unit: LengthUnit) => `Gap and overlap, ${unit}`,
  } satisfies Record<FigureKind, (unit: LengthUnit) => string>,
  /** Under the ends of the scale. */
  ends: {
    stretch: ['squash', 'stretch'],
    bend: ['valley', 'ridge'],
    room: ['core in the foam', 'room'],
    pull: ['none', 'too much'],
    fit: ['overlap', 'gap'],
  } satisfies Record<FigureKind, readonly [string, string]>,
  /** What the scale says to those who do not see it. */
  scale: {
    stretch: (limit: string) => `Scale from ${limit} squash through true length to ${limit} stretch`,
    bend: (limit: string, notice: string) =>
      `Scale from skins strained by ${limit} in a valley through flat to ${limit} on a ridge; ${notice} is worth a word`,
    room: (limit: string, wanted: string) =>
      `Scale from a core ${limit} deep in the foam through foam that touches it to ${limit} of room; ${wanted} is wanted`,
    pull: (limit: string, notice: string) => `Scale from no pull to ${limit}; ${notice} is worth a word`,
    fit: (limit: string) => `Scale from an overlap of ${limit} through edges that meet to a gap of ${limit}`,
  } satisfies Record<FigureKind, (limit: string, notice: string) => string>,
  /** While nothing is pointed at. */
  hint: {
    stretch: 'Point at a place, or walk to it, for its figures.',
    bend: 'Point at a place for its radius. Grey: grooved or kerfed, not bent.',
    room: 'Point at a place for its room. Grey: no core beside it.',
    pull: 'Point at a seam, or choose it, for its pull. Grey foam: no figure.',
    fit: 'Point at a seam, or choose it, for its figures.',
  } satisfies Record<FigureKind, string>,
  noCore: 'There is no core now: put one in under Body and core.',
  waiting: 'being worked out …',
  reading: {
    stretch: (squash: string, stretch: string) => `Here: squash ${squash}, stretch ${stretch}`,
    bend: (isRidge: boolean, radius: string, strain: string) =>
      `Here: ${isRidge ? 'ridge' : 'valley'} of radius ${radius}, skins strained by ${strain}`,
    flat: 'Here: as good as flat',
    room: (mm: string, isInFoam: boolean) =>
      isInFoam ? `The core stands ${mm} deep in the foam here` : `${mm} of room here`,
    pull: (letter: string, pull: string, way: string) => `Seam ${letter}: ${pull}, ${way}`,
    fit: (letter: string, face: string, back: string) => `Seam ${letter}: ${face} at the face, ${back} at the back`,
  },
  gap: (mm: string) => `gap ${mm}`,
  overlap: (mm: string) => `overlap ${mm}`,
  pull: (newtonPerCm: string) => `${newtonPerCm}\u00a0N/cm`,
  bendStrokes: { whole: 'along a ridge', broken: 'along a valley' },

  table: {
    open: 'as a table',
    caption: (kind: string) => `Figures of ${kind}, most first until you sort them`,
    piece: 'Piece',
    seam: 'Seam',
    core: 'Core',
    figure: 'Figure',
    limit: 'Limit',
    where: 'Where',
    sort: (column: string) => `${column}, sort by it`,
    none: 'No figure worth a line.',
    more: (n: number) => `all ${n}`,
    stretch: (pct: string) => `stretch ${pct}`,
    squash: (pct: string) => `squash ${pct}`,
    radius: (radius: string) => `radius ${radius}`,
    tightest: 'tightest place',
    all: 'all of it',
    between: (one: string, other: string) => `${one} – ${other}`,
    isOver: 'over its limit',
  },
});
