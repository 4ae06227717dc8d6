import type { Translation } from '../language/spoken.ts';
import type { PROPOSE_WORDS } from '../propose-words.ts';
import { seams } from './count.ts';

const KINDS: Translation<typeof PROPOSE_WORDS>['kinds'] = {
  few: 'Wenige Stücke',
  between: 'Dazwischen',
  simple: 'Einfache Stücke',
  first: 'Beste Stelle',
  second: 'Zweite Stelle',
  third: 'Dritte Stelle',
};

const LIMITS: Readonly<Record<string, string>> = {
  stretch: 'Dehnung',
  squash: 'Stauchung',
  overlap: 'liegt über sich selbst',
  sheet: 'zu groß',
  width: 'zu schmal',
  cut: 'keine Kante',
  bend: 'Biegung',
};

export const PROPOSE: Translation<typeof PROPOSE_WORDS> = {
  kinds: KINDS,
  verbs: {
    propose: 'Nähte vorschlagen',
    rest: 'den Rest vorschlagen',
    ease: 'dieses Stück entlasten',
    stop: 'Suche nach Nähten anhalten',
    take: (kind) => `Vorschlag nehmen: ${KINDS[kind]}`,
  },
  begin: 'Nähte vorschlagen',
  rest: 'Den Rest vorschlagen',
  restWhy: 'Was markiert ist, bleibt; was fehlt, kommt dazu.',
  limit: 'Dehnung höchstens',
  limitLabel: 'Größte Dehnung und Stauchung, die ein Vorschlag dem Schaumstoff zumuten darf, in Prozent',
  hide: 'Nähte verstecken',
  hideLabel: 'Seite, die am wenigsten zu sehen ist: Nähte kosten dort weniger, von vorn gesehen',
  sides: {
    nowhere: 'nirgends besonders',
    back: 'hinten',
    under: 'unten',
    left: 'links',
    right: 'rechts',
  },
  stop: 'Anhalten',
  put: 'Weglegen',
  caption: 'Drei Vorschläge nebeneinander. Auf einen zeigen, um seine Nähte am Modell zu sehen.',
  looking: 'Nähte werden gesucht …',
  better: 'Sie werden besser, bis angehalten wird.',
  working: 'Platten und Seiten werden ausgearbeitet …',
  done: 'Auf einen zeigen, um seine Nähte am Modell zu sehen.',
  rows: {
    pieces: 'Stücke',
    darts: 'Abnäher',
    length: 'Nähte',
    stretch: 'Dehnung',
    squash: 'Stauchung',
    foam: 'Schaumstoff',
    sheets: 'Platten',
    pages: 'Seiten',
  },
  easing: {
    begun: 'Der kleinste Schnitt wird gesucht …',
    caption:
      'Stellen, die das Stück entlasten, die günstigste zuerst. Auf eine zeigen, um ihren Schnitt am Modell zu sehen.',
    why: 'Das Stück überschreitet eine Grenze:',
    rows: { pieces: 'Zerfällt in', darts: 'Neue Abnäher', length: 'Neue Naht' },
    mends: 'Behebt',
    limits: (names) => names.map((name) => LIMITS[name]).join(', '),
    none: 'Keine Naht und kein Abnäher bringt es unter die Grenze. Mehr Dehnung erlauben, dünneren Schaumstoff nehmen oder festgehaltene Nähte loslassen.',
    keeps: 'Das Stück hält alle Grenzen ein.',
    stopped: 'Angehalten, bevor etwas gefunden war.',
    done: 'Auf eine zeigen, um ihren Schnitt am Modell zu sehen.',
    spoken: (n) => (n === 1 ? 'Eine Stelle zum Entlasten ist gefunden.' : `${n} Stellen zum Entlasten sind gefunden.`),
  },
  same: (names) =>
    `${names.slice(0, -1).join(', ')} und ${names.at(-1)} sind dieselben Nähte: Dazwischen fand sich nichts Besseres.`,
  unknown: '…',
  take: 'Nehmen',
  picture: (kind, pieces) => `${KINDS[kind]}: ${pieces} flache Stücke nebeneinander`,
  broken: 'Überschreitet eine Grenze',
  bent: 'Biegt sich eng',
  all: 'alle drei',
  taken: 'einen Vorschlag nehmen',
  costs: {
    verb: 'Was würde es kosten, jede Naht zu verbinden?',
    stopVerb: 'nicht weiter ausrechnen, was Verbinden kostet',
    ask: 'Was würde es kosten, jede Naht zu verbinden?',
    known: (n, of) => `${n} von ${seams(of)}`,
    seam: 'Naht',
    joins: 'Verbindet',
    saves: 'Spart',
    choose: (letter) => `Naht ${letter} wählen`,
    closes: (piece) => `${piece} mit sich selbst`,
    faults: {
      notFlat: 'dann nicht flach auszulegen',
      overlaps: 'liegt dann über sich selbst',
      sheet: 'dann größer als die Platte',
      limit: 'mehr, als der Schaumstoff verträgt',
    },
    said: (n) =>
      n === 0
        ? 'Keine Naht lässt sich innerhalb der Grenzen verbinden.'
        : `${n} lassen sich innerhalb der Grenzen verbinden.`,
  },
  spoken: {
    begun: 'Nähte werden gesucht.',
    first: (pieces) => `Ein erster Vorschlag mit ${pieces} Stücken ist da.`,
    done: 'Angehalten. Drei Vorschläge stehen nebeneinander.',
    taken: 'Der Vorschlag ist genommen. Rückgängig bringt die alten Nähte zurück.',
  },
};
