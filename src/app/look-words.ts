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
  from: 'Look from',
  sides: { front: 'front', left: 'left', back: 'back', right: 'right', top: 'top', bottom: 'below' },
  wholeProp: 'Whole prop',
  propVerb: 'see the whole prop',
  settingOut: 'Setting out …',
  toSheet: (title: string) => `${title}: come close`,
  laidOver: { page: 'A page lies over the bench.', sheet: 'A sheet lies over the bench.' },
  inPlace: (some: number, all: number) => `${some} of ${all} pieces in place.`,
  lastOn: (name: string) => `Glued on last of them: ${name}.`,
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
  keys: 'Drag the frame, its arrow or its knobs; arrow keys on the picture move and lean it, with Shift by more or the other way.',
});
