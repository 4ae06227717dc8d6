import type { Translation } from '../language/spoken.ts';
import type { LOOK_WORDS } from '../look-words.ts';

const LOOKS: Translation<typeof LOOK_WORDS>['looks'] = {
  foam: 'Schaumstoff',
  face: 'Sichtseite',
  neutral: 'neutrale Schicht',
  back: 'Rückseite',
  sculpt: 'Modell',
  prop: 'fertiges Requisit',
};

export const LOOK: Translation<typeof LOOK_WORDS> = {
  legend: 'Ansicht',
  looks: LOOKS,
  lookVerb: (look) => `ansehen: ${LOOKS[look]}`,
  next: 'nächste Ansicht',
  from: 'Blick von',
  sides: { front: 'vorn', left: 'links', back: 'hinten', right: 'rechts', top: 'oben', bottom: 'unten' },
  wholeProp: 'Ganzes Requisit',
  propVerb: 'das ganze Requisit sehen',
  settingOut: 'Wird ausgelegt …',
  toSheet: (title) => `${title}: näher heran`,
  laidOver: { page: 'Über der Werkbank liegt eine Seite.', sheet: 'Über der Werkbank liegt eine Platte.' },
  inPlace: (some, all) => `${some} von ${all} Stücken an ihrem Platz.`,
  lastOn: (name) => `Davon zuletzt angeklebt: ${name}.`,
  making: 'Wird zusammengesetzt …',
  cut: 'Aufschneiden',
  cutVerb: 'aufschneiden',
  closeVerb: 'wieder schließen',
  facing: 'Schnitt',
  facings: { front: 'aufrecht', side: 'längs', level: 'waagerecht' },
  other: 'andere Hälfte',
  place: (mm) => `Stelle des Schnitts, ${mm} von der Mitte`,
  size: (breadth, height) => `Schnitt: ${breadth} breit, ${height} hoch.`,
  missed: 'Die Ebene trifft hier keinen Schaumstoff.',
  thick: (thickness) => `Hier ${thickness} durch den Schaumstoff.`,
  point: 'Auf den Schnitt zeigen, um die Dicke zu lesen.',
  keys: 'Rahmen, Pfeil oder Knöpfe ziehen; Pfeiltasten auf dem Bild verschieben und neigen, mit der Umschalttaste weiter oder in der anderen Richtung.',
};
