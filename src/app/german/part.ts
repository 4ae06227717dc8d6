import type { Translation } from '../language/spoken.ts';
import type { PART_WORDS } from '../part-words.ts';
import { count, pieces } from './count.ts';

const KINDS: Readonly<Record<string, string>> = {
  sculpt: 'Modell',
  shape: 'Grundform',
  stack: 'Stapel aus Platten',
  artwork: 'flaches Motiv',
  'build-up': 'Aufbau auf einem Kern',
  trim: 'Zierleiste',
  covers: 'Abdeckungen über Nähten',
  clay: 'Masse über einem Kern',
  strap: 'Riemen',
};

const parts = (n: number): string => count(n, 'Teil', 'Teile');

export const PART: Translation<typeof PART_WORDS> = {
  answer: (all, flat) => (flat === 0 ? parts(all) : `${parts(all)}, ${pieces(flat)}`),
  none: 'noch kein Teil',
  list: 'Teile des Requisits',
  kind: (kind) => KINDS[kind] ?? kind.replaceAll('-', ' '),
  shape: (shape) => `Grundform, ${shape}`,
  foam: (thickness) => `Schaumstoff ${thickness}`,
  atWork: 'in Arbeit',
  pieces,
  copies: (n) => `${n} davon`,
  told: (n) => `${n} anzusehen`,
  notMade: 'nicht herstellbar',
  notYet: 'noch nicht ausgearbeitet',

  add: {
    shape: 'Grundform hinzufügen',
    sculpt: 'Modell hinzufügen …',
    file: 'Aus einer Datei hinzufügen …',
    fileWhy: 'Eine Zeichnung oder ein Bild wird ausgeschnitten, wie es ist; ein Modell wird aus Platten gestapelt.',
    heading: 'Eine neue Grundform',
    put: 'Ins Projekt stellen',
    leave: 'Nicht nehmen',
  },
  begin: 'Mit einer Grundform beginnen',
  beginVerb: 'einen neuen Auftrag mit einer Grundform beginnen',
  prop: 'Requisit',
  first: { name: 'Rohrmantel', shape: 'Mantel' },

  fields: {
    name: 'Name',
    copies: 'Wie viele',
    foam: 'Schaumstoff',
    foams: 'Erlaubte Schaumstoffe',
    x: 'x',
    y: 'y',
    z: 'z',
    turn: 'Um z gedreht',
    place: 'Wo es im Requisit steht',
    tip: { x: 'über x kippen', y: 'über y kippen' },
    tipWhy: 'Eine Vierteldrehung um x oder y.',
    noName: 'Dem Teil einen Namen geben.',
    remove: 'entfernen',
    last: 'Es ist das einzige Teil: zuerst ein anderes öffnen oder hinzufügen.',
    workOn: 'hieran arbeiten',
    setOn: (sculpt) => `auf ${sculpt} setzen, wohin der Blick geht`,
    isOn: (sculpt) => `Es sitzt auf ${sculpt}; seine Maße verschieben es.`,
    notThere: 'Das Modell liegt nicht in der Bildmitte: zur gewünschten Stelle drehen und noch einmal aufsetzen.',
    ofArea: 'Es gehört zu einer Fläche des Modells und geht mit ihr.',
    sculpt: 'Größe, Nähte und Schaumstoff dieses Modells stehen weiter unten.',
    notAtWork: 'Größe, Nähte und Schaumstoff stehen unten, solange daran gearbeitet wird.',
  },

  shapes: {
    shape: 'Grundform',
    find: 'Eine Grundform nach Namen suchen',
    list: 'Grundformen',
    found: (n) =>
      n === 0 ? 'Keine Grundform heißt so: ein kürzeres Wort versuchen.' : count(n, 'Grundform', 'Grundformen'),
    other: 'andere Grundform',
    close: 'Liste schließen',
    sizes: 'Maße',
    finer: 'Schaumstoff und feinere Maße',
    usual: (text) => `Üblich: ${text}.`,
    ofFoam: (text) => `Wie der Schaumstoff, ${text}.`,
    figures: (n) => `Kennwerte der Grundform (${n})`,
    figure: 'Kennwert',
    value: 'Betrag',
    labels: { K: 'Lage der neutralen Schicht' },
    picture: (all) => `Flache Stücke: ${all}`,
    times: (n, name) => (n === 1 ? name : `${n} × ${name}`),
    size: (name, x, y) => `${name}, ${x} × ${y}`,
    trying: 'wird gezeichnet …',
    cannot: 'Diese Maße passen noch nicht zusammen.',
    kept: 'Das Projekt behält die Maße, die zuletzt zusammenpassten.',
  },

  bends: { flat: 'bleibt flach', rolled: 'gerollt', folded: 'gefalzt', formed: 'warm geformt' },

  groups: {
    round: 'Mäntel, Kegel und Kanäle',
    balls: 'Kugeln, Kuppeln und Ringe',
    layers: 'Aus Lagen von Platten',
    boxes: 'Kästen, Prismen und Verbindungen',
    solids: 'Körper mit regelmäßigen Flächen',
    flat: 'Flache Umrisse',
    strips: 'Einfassungen, Streifen und Bögen',
    more: 'Weitere Grundformen',
  },

  nothing: 'Hier liegt noch nichts: eine Datei öffnen oder in den Listen daneben ein Teil hinzufügen.',
  noForm: 'Seine Teile sind flach: Sie liegen auf den Platten in den Listen daneben.',
};
