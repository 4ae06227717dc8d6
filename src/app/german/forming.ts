import type { FORMING_WORDS } from '../forming-words.ts';
import type { Translation } from '../language/spoken.ts';
import { count } from './count.ts';

export const FORMING: Translation<typeof FORMING_WORDS> = {
  laying: {
    summary: 'Wie flach ausgelegt wird',
    seams: 'Nahtlängen gegen Dehnung',
    steps: [
      { price: 0, name: 'geringste Dehnung' },
      { price: 10, name: 'weniger Dehnung' },
      { price: 100, name: 'beides gleich' },
      { price: 300, name: 'Nahtlängen zuerst' },
      { price: 1000, name: 'genaueste Nähte' },
    ],
    step: (name, price) => `${name}, ${price}`,
    seamsWhy:
      'Weiter rechts behalten beide Seiten einer Naht ihre wahre Länge; was das kostet, gibt der Schaumstoff dazwischen her.',
    squash: 'Stauchung zählt mehr als Dehnung',
    times: (times) => (times === '1' ? 'beides gleich' : `${times}-fach`),
    squashWhy:
      'Schaumstoff lässt sich viel leichter dehnen als stauchen: Zählt Stauchung mehr, wird stattdessen gedehnt.',
    evenOut: 'das Schlimmste ausgleichen',
    evenOutWhy: 'Die am stärksten beanspruchte Stelle gibt weniger nach, alle anderen ein wenig mehr.',
    keepApart: 'Kanten auseinanderhalten',
    keepApartWhy:
      'Kanten eines Stücks, die übereinanderlägen, werden getrennt gehalten; der Schaumstoff gibt dafür nach.',
    price: 'Was die letzte Änderung bewirkt hat',
    figures: { stretch: 'Größte Dehnung', squash: 'Größte Stauchung', seams: 'Nahtseiten verschieden, höchstens' },
    before: 'Vorher',
    now: 'Jetzt',
    pending: '…',
  },
  spots: {
    heading: 'Wo der Schaumstoff am meisten nachgibt',
    give: { stretch: (pct) => `${pct} Dehnung`, squash: (pct) => `${pct} Stauchung` },
    rest: (piece, place, way) => `${piece}, ${place}: ${way}`,
    more: (n) => count(n, 'weitere Stelle', 'weitere Stellen'),
  },
  bound: {
    least: (piece, least, now) =>
      `Wie ${piece} auch ausgelegt wird: Die am stärksten gedehnte Stelle bleibt mindestens ${least} länger als die am stärksten gestauchte (jetzt ${now}). Nur eine weitere Naht oder ein Abnäher ändert das.`,
  },
  areas: {
    heading: 'Flächen',
    name: 'Name der Fläche',
    give: 'Wie sie nachgibt',
    gives: { normal: 'wie der Rest', stiff: 'steif', soft: 'weich, wird erwärmt' },
    takeAway: 'entfernen',
    remove: (name) => `${name} entfernen`,
    panel: (at, of, area) => `Feld ${at} von ${of}, ${area}.`,
    spot: (area) => `Fläche von ${area}.`,
    within: 'Innerhalb',
    wholePanel: 'Feld',
    named: { panel: (piece, at) => `${piece}, Feld ${at}`, spot: (piece) => `${piece}, Fläche` },
    again: 'Eine Stelle darauf anklicken, um eine Fläche zu meinen.',
    raise: 'Eine Platte auf der Sichtseite',
    notRaised: 'nicht aufgelegt',
    raised: (foam) => `aufgelegt in ${foam}`,
    isStiff: 'Steif.',
    isSoft: 'Weich, wird erwärmt.',
  },
  grain: {
    label: 'Laufrichtung',
    choices: {
      none: 'wie es kommt',
      any: 'längs der Platte',
      across: 'Dehnung quer dazu',
      along: 'Dehnung in ihr',
    },
    fromUp: '° links von oben',
    fromSide: '° von der langen Seite',
  },
  verbs: {
    stiff: 'steif',
    soft: 'weich, wird erwärmt',
    asRest: 'wie der Rest',
    nextPanel: 'nächstes Feld',
    holdLength: 'Länge halten',
    letLength: 'Länge freigeben',
    straight: 'gerade halten',
    letStraight: 'Krümmung zulassen',
  },
  edges: { held: 'behält ihre Länge', straight: 'gerade gehalten' },
  shrink: {
    heading: 'Schrumpfen bei Wärme',
    how: 'Ein Quadrat von 100 mm schneiden, so erwärmen wie später die Stücke, abkühlen lassen und in beiden Richtungen messen: 98 mm übrig sind 2 Prozent.',
    along: 'Längs der Platte, Prozent',
    across: 'Quer zur Platte, Prozent',
    allow: 'für das Schrumpfen größer schneiden',
    first: 'Zuerst den Schaumstoff ausmessen.',
    done: 'Stücke werden größer gezeichnet und sagen es; eines, das in einer Richtung mehr schrumpft, trägt einen Pfeil für die Laufrichtung und liegt längs der Platte.',
    wrong: (most) => `Eine Zahl von Prozent unter ${most}, kleiner als null, wo er wächst.`,
    caution: 'Vor dem Erwärmen',
  },
  legend: {
    whole: 'ganzer Strich: in seiner Richtung dehnen',
    broken: 'unterbrochener Strich: in seiner Richtung stauchen',
  },
};
