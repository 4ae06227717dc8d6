import { formatNumber } from '../../base/format-length.ts';
import type { Translation } from '../language/spoken.ts';
import type { PLACING_WORDS } from '../placing-words.ts';
import { sheets } from './count.ts';

export const PLACING: Translation<typeof PLACING_WORDS> = {
  answer: (bought, inHand, size) =>
    [
      ...(bought === 0 ? [] : [`${sheets(bought)}${size === '' ? '' : ` zu ${size}`}`]),
      ...(inHand === 0 ? [] : [bought === 0 ? `${sheets(inHand)} vorhanden` : `und ${inHand} vorhanden`]),
    ].join(' '),
  isKept: 'Die Anordnung bleibt, wie sie genommen oder von Hand gelegt wurde.',
  anew: 'Neu anordnen',
  isOfOther: (foams) =>
    `Die genommene Anordnung war für ${foams}. Dieser Schaumstoff wird neu angeordnet; mit dem anderen kommt sie zurück.`,
  forgetOther: 'Jene Anordnung vergessen',
  open: 'Stücke von Hand legen',
  openOf: (sheet) => `${sheet}: Stücke von Hand legen`,
  sheet: (n) => `Platte ${n}`,
  bought: 'zu kaufen',
  inHand: (name) => `vorhanden: ${name}`,
  kind: (size, thickness) => `${size}, Schaumstoff ${thickness}`,
  used: (share) => `${share} genutzt`,
  last: (length) => `belegt bis ${length}`,
  left: (size) => `${size} bleiben ganz`,
  view: (sheet) => `${sheet} von oben. Tab geht von Stück zu Stück.`,
  closer: { true: 'ganze Platte', false: 'näher heran' },
  before: 'vorige Platte',
  next: 'nächste Platte',
  close: 'zurück zur Werkbank',
  place: (n, of) => `Platte ${n} von ${of}`,

  piece: (number, name, copy, copies) =>
    copies > 1 ? `${number} ${name}, Exemplar ${copy + 1} von ${copies}` : `${number} ${name}`,
  label: (name, isHeld) => `${name}${isHeld ? ', festgehalten' : ''}`,
  held: 'festgehalten',
  heldHere: 'Festgehalten: Es bleibt hier, wenn der Rest neu angeordnet wird.',
  loose: 'Nicht festgehalten: Es liegt, wo die Anordnung es hinlegt.',
  choose: 'Ein Stück ziehen, oder mit Tab wählen und mit den Pfeiltasten verschieben, mit der Umschalttaste feiner.',
  move: 'verschieben',
  ways: { ArrowLeft: 'nach links', ArrowUp: 'nach oben', ArrowDown: 'nach unten', ArrowRight: 'nach rechts' },
  turnLeft: 'links drehen',
  turnRight: 'rechts drehen',
  turnHalf: 'halb herum drehen',
  flip: 'andere Seite nach oben',
  noFlip:
    'Seine andere Seite darf nicht oben liegen: zuerst unter „Vorhandener Schaumstoff“ sagen, wo beide Seiten gleich sind.',
  hold: 'hier festhalten',
  release: 'loslassen',
  toSheet: 'Auf',
  together: 'Zusammen mit',
  alone: 'keinem',
  withGroup: (numbers) => `mit ${numbers}`,
  tool: (deg) => `Um ${formatNumber(deg)}° gedreht`,
  handle: 'An diesem Griff drehen',

  at: (name, across, up) => `${name}: Seine Mitte liegt ${across} quer und ${up} hoch auf der Platte.`,
  inAir: {
    wait: 'Es wird geprüft, ob es dort liegen kann …',
    over: (name) => `Es läge über ${name}: wegziehen.`,
    clear: 'Es läge über einer freigehaltenen Stelle: wegziehen.',
    edge: 'Es ragte über den nutzbaren Rand: hineinziehen.',
  },
  spoken: {
    back: (why) => `${why} Es liegt wieder, wo es war.`,
    full: (sheet) => `Auf Platte ${sheet + 1} ist dafür, so gedreht, kein Platz.`,
    onSheet: (name, sheet) => `${name} liegt auf Platte ${sheet + 1}.`,
    blocked: {
      over: (name) => `${name} ist im Weg.`,
      clear: 'Eine freigehaltene Stelle ist im Weg.',
      edge: 'Weiter geht es nicht.',
    },
  },
};
