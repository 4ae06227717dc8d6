import type { JOIN_WORDS } from '../join-words.ts';
import type { Translation } from '../language/spoken.ts';

export const JOIN: Translation<typeof JOIN_WORDS> = {
  verbs: {
    butt: 'auf Stoß',
    lap: (width) => `${width} überlappen`,
    otherLap: 'auf der anderen Seite überlappen',
    over: 'Überlappung oben auflegen',
    under: 'Überlappung unterlegen',
    rebate: 'Stufenfalz',
    otherStands: 'das andere Stück stehen lassen',
  },
  steep: {
    split: 'einen Streifen dazwischensetzen',
    fill: 'Spalt lassen und füllen',
    trim: 'Spalt unter einer Zierleiste lassen',
    asItFolds: 'schneiden, wie es sich falzt',
  },
  liesOver: (top, under) => (top === under ? 'ein Ende liegt über dem anderen' : `${top} liegt über ${under}`),
  standsOn: (stands, on) => (stands === on ? 'eine Kante steht auf der anderen' : `${stands} steht auf ${on}`),
  onFace: (length) => `${length} auf der Sichtseite`,
  onBack: (length) => `${length} auf der Rückseite`,
  step: (sides) => `Stufe von ${sides.join(', ')}`,
  kind: { lap: 'Überlappung', rebate: 'Stufenfalz', step: 'Stufe' },
  pieceFoam: 'Schaumstoff',
  asSheet: (thickness) => `wie die Platte, ${thickness}`,
};
