import { formatNumber, formatPlain } from '../../base/format-length.ts';
import type { Translation } from '../language/spoken.ts';
import type { QUANTITY_WORDS } from '../quantity-words.ts';
import { count, pieces, sheets } from './count.ts';

/** Minutes under two hours, hours from there on. */
const time = (min: number): string =>
  min < 120 ? `${formatPlain(min)} min` : `${formatPlain(Math.round(min / 6) / 10)} h`;

export const QUANTITY: Translation<typeof QUANTITY_WORDS> = {
  waiting: 'wartet auf Stücke',
  making: 'wird ausgearbeitet',
  unfinished: 'wartet, bis jedes Stück flach liegt',
  answer: (mass, longest) => `${mass} roh, ${longest} an der längsten Stelle`,
  cost: (cost) => `Was einen Preis hat, kommt auf ${cost}.`,
  mass: (grams) => (grams < 1000 ? `${formatNumber(grams)}\u00a0g` : `${formatNumber(grams / 1000, 2)}\u00a0kg`),
  money: (amount, currency) => `${formatNumber(amount, 2)}${currency === undefined ? '' : `\u00a0${currency}`}`,
  volume: (ml) =>
    ml < 1000 ? `${Math.max(5, 5 * Math.ceil(ml / 5))}\u00a0ml` : `${formatNumber(Math.ceil(ml / 100) / 10, 1)}\u00a0l`,
  size: (x, y, z) => `Fertig misst es ${x} × ${y} × ${z}.`,
  centre: (x, y, z) =>
    `Sein Schwerpunkt liegt bei x ${x}, y ${y}, z ${z} vom Nullpunkt des Modells, nach der angegebenen Dichte des Schaumstoffs und ohne Kleber, Farbe und Beschläge.`,
  event: 'Veranstaltungen setzen Grenzen für Größe und Gewicht: dort nachfragen.',
  seams: (length) =>
    `${length === null ? '' : `${length} Naht. `}Die Mengen folgen aus der Ergiebigkeit auf dem Etikett: ein Drittel mehr für Pinsel und Dose bereithalten.`,
  tooLarge: (n, foam) =>
    n === 1
      ? `Nicht gezählt: ein Stück, für das keine Platte ${foam} groß genug ist.`
      : `Nicht gezählt: ${pieces(n)}, für die keine Platte ${foam} groß genug ist.`,
  table: {
    caption: 'Was gebraucht wird: was, wie viel, wofür und was es kostet',
    what: 'Was',
    much: 'Wie viel',
    for: 'Wofür',
    cost: 'Kosten',
    sheets: (bought, inHand) =>
      inHand === 0 ? sheets(bought) : bought === 0 ? `${inHand} vorhanden` : `${bought} zu kaufen, ${inHand} vorhanden`,
    pieces: (area) => `${area} Stücke`,
    faces: (area) => `${area}, beide Seiten`,
    coats: (area, coats) => `${area}, ${count(coats, 'Anstrich', 'Anstriche')}`,
    clay: 'Hohlkehlen und Formen, nass',
    all: 'Was einen Preis hat, zusammen',
  },
  prices: {
    heading: 'Preise',
    currency: 'Währung',
    sheet: (foam) => `Eine Platte ${foam}`,
    glue: 'Ein Liter Kleber',
  },
  glue: {
    heading: (name) => `Kleber: ${name}`,
    choose: 'Kleber',
    label: 'Das Etikett der Dose geht vor. Eintragen, was es sagt:',
    waitMin: 'Abgelüftet nach',
    openMin: 'Zu fügen innerhalb',
    cureH: 'Volle Festigkeit nach',
    coverageM2PerL: 'Reicht, eine Seite',
    brushMmPerMin: 'Einstreichen',
    joinMmPerMin: 'Zurollen',
    alignMinPerSeam: 'Erste Berührung finden',
    units: { min: 'min', h: 'h', m2PerL: 'm² je Liter', mmPerMin: 'mm je Minute', inPerMin: 'in je Minute' },
    tooShort: ({ waitMin, alignMinPerSeam }) =>
      `Er muss länger als ${formatPlain(waitMin + alignMinPerSeam)} min offen bleiben: bis er abgelüftet und die erste Berührung gefunden ist.`,
    usual: 'Wieder die üblichen Werte nehmen',
  },
  coats: {
    heading: (names) =>
      names.length === 0 ? 'Anstriche: keine, es bleibt roh' : `Anstriche: ${names.join('; dann ')}`,
    list: 'Anstriche in der Reihenfolge des Auftrags',
    coats: 'Anstriche',
    coverage: 'Ein Anstrich reicht für',
    recoat: 'Von Anstrich zu Anstrich',
    cure: 'Tragbar nach',
    dries: (min, cureH) =>
      `Seine Anstriche brauchen ${time(min)} zum Trocknen; tragbar ${formatPlain(cureH)} h nach dem letzten.`,
    remove: (name) => `${name} entfernen`,
    earlier: (name) => `${name} früher auftragen`,
    earlierShort: 'früher',
    removeShort: 'entfernen',
    add: 'Anstrich hinzufügen',
    choose: 'wählen …',
    bare: 'Keine: Das Requisit bleibt roh.',
  },
  source: 'Übliche Werte',
  wrong: (least, most, isOver, isWhole) => {
    const what = isWhole ? 'Eine ganze Zahl' : 'Eine Zahl';
    const from = isOver ? `über ${formatPlain(least)}` : `ab ${formatPlain(least)}`;
    return Number.isFinite(most) ? `${what} ${from} bis ${formatPlain(most)}.` : `${what} ${from}.`;
  },
};
