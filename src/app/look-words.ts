import type { Look } from '../viewport/bench-contract.ts';
import { spoken } from './language/spoken.ts';
import type { SectionFacing } from './section-plane.ts';

const LOOKS: Readonly<Record<Look, string>> = {
  foam: 'foam',
  face: 'face',
  neutral: 'neutral surface',
  back: 'back',
  sculpt: 'sculpt',
  prop: 'finished prop',
};
const FACINGS: Readonly<Record<SectionFacing, string>> = { front: 'upright', side: 'lengthwise', level: 'level' };

/** Words of the row over the scene: which surface is looked at, and what a plane cuts open. */
export const LOOK_WORDS = spoken('look', {
  legend: 'Look at',
  looks: LOOKS,
  lookVerb: (look: Look) => `look at the ${LOOKS[look]}`,
  next: 'look at the next surface',
  apart: 'Taken apart in the order of gluing',
  order:
    'Order: sheets from the inside out; in each the largest piece first, then always the one that shares most seam with those in place.',
  inPlace: (some: number, all: number) => `${some} of ${all} pieces in place.`,
  lastOn: (name: string) => `Last put on: ${name}.`,
  making: 'Being put together …',
  cut: 'Cut open',
  cutVerb: 'cut it open',
  closeVerb: 'close it again',
  facing: 'Cut it',
  facings: FACINGS,
  other: 'other half',
  place: (mm: string) => `Place of the cut, ${mm} from the middle`,
  size: (breadth: string, height: string) => `Cut: ${breadth} wide, ${height} high.`,
  missed: 'The plane meets no foam here.',
  thick: (thickness: string) => `Here ${thickness} through the foam.`,
  point: 'Point at the cut foam for its thickness.',
  showFit: 'show how it fits',
  hideFit: 'hide how it fits',
  fitLegend: (limit: string) => `Scale from an overlap of ${limit} through edges that meet to a gap of ${limit}`,
  fitHint: 'overlap ← mm → gap, along every seam on face and back. Point at a seam for its figures.',
  fitReading: (letter: string, face: string, back: string) =>
    `Seam ${letter}: ${face} at the face, ${back} at the back`,
  gapOf: (mm: string, isOverlap: boolean) => `${isOverlap ? 'overlap' : 'gap'} ${mm}`,
  showRoom: 'show the room round the core',
  hideRoom: 'hide the room round the core',
  noCore: 'There is no core now: put one in under Body and core.',
  roomLegend: (limit: string, wanted: string) =>
    `Scale from a core ${limit} deep in the foam through foam that touches it to ${limit} of room; ${wanted} wanted`,
  roomHint: (wanted: string) =>
    `core in the foam ← 0 touches → room, on the inside of the foam; ${wanted} wanted. Grey: no core beside it. Point at a place for its figure.`,
  roomReading: (mm: string, isInFoam: boolean) =>
    isInFoam ? `The core stands ${mm} deep in the foam here` : `${mm} of room here`,
  keys: 'Drag the frame, its arrow or its knobs; arrow keys on the picture move and lean it, with Shift by more or the other way.',
});
