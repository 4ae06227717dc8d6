import { formatNumber } from '../../base/format-length.ts';
import { dataText } from '../data-words.ts';
import type { GLUING_WORDS } from '../gluing-words.ts';
import type { Translation } from '../language/spoken.ts';
import { count, steps } from './count.ts';

export const GLUING: Translation<typeof GLUING_WORDS> = {
  waiting: 'wartet auf Stücke',
  making: 'wird ausgearbeitet',
  unfinished: 'wartet, bis jedes Stück flach liegt',
  none: 'nichts zu kleben: Keine zwei Kanten treffen sich',
  answer: (n, batches) => `${steps(n)} in ${count(batches, 'Durchgang', 'Durchgängen')}`,
  ofParts: (n, parts) => `${steps(n)} Arbeit an ${count(parts, 'Teil', 'Teilen')}`,
  partSteps: 'Arbeit an den anderen Teilen',
  copies: (n) => `jeder Schritt ${n}-mal`,
  pieces: (numbers) => `Stück ${numbers.join(', ')}`,
  how: 'Kontaktkleber greift sofort und lässt sich nicht schieben: die Kanten am Punkt ansetzen, dann den Pfeilen nach zurollen.',
  glue: ({ name, waitMin, openMin }) =>
    `${dataText(name)}: abgelüftet nach ${formatNumber(waitMin)} min, zu fügen innerhalb ${formatNumber(openMin)} min. Sagt das Etikett etwas anderes, unter „Was gebraucht wird“ eintragen.`,
  outside: (letters) =>
    letters.length === 1
      ? `Blind geklebt: Ist Naht ${letters[0]} zu, kommt keine Hand von innen heran. Von außen andrücken.`
      : `Blind geklebt: Sind die Nähte ${letters.join(', ')} zu, kommt keine Hand von innen heran. Von außen andrücken.`,
  reached: 'An jede Naht kommt beim Schließen eine Hand von innen heran.',
  steps: 'Schritte des Klebens in ihrer Reihenfolge',
  step: (number) => `Schritt ${number}`,
  chosen: (number, title) => `Schritt ${number}: ${title}`,
  picture: (number) =>
    `Das Requisit nach Schritt ${number}: Was dazukommt, ist kräftig gezeichnet, der Punkt wird zuerst angesetzt`,
  drawing: 'Das Bild wird gezeichnet …',
  warm: 'Zuerst erwärmen, bevor der Kleber geöffnet wird',
  blind: 'blind geklebt',
  earlier: 'Früher',
  later: 'Später',
  moveLabel: (way, number) => `Schritt ${number} ${way === 'earlier' ? 'früher' : 'später'} kleben`,
  grip: 'Ziehen, um früher oder später zu kleben',
  keys: 'Auf einem Schritt verschiebt Alt mit einer Pfeiltaste.',
  fixed:
    'Was auf die untere Platte geklebt wird, kommt nach dieser Platte, Stück für Stück von der Mitte her: Es lässt sich nicht verschieben.',
  anew: 'Reihenfolge neu finden',
  anewWhy: 'Gibt die verschobene Reihenfolge auf.',
  yours: 'In der selbst gewählten Reihenfolge.',
  refused: (number) => `Schritt ${number} kann dort nicht hin:`,
  cannot: 'Er bleibt, wo er ist:',
  why: (text) => text.replace(/ in the order of gluing you chose/, ' there').replace(/ Until then .*$/, ''),
  close: 'Verstanden',
  spoken: {
    moved: 'Verschoben. Die Reihenfolge wird neu ausgearbeitet.',
    first: 'Es ist schon der erste Schritt.',
    last: 'Es ist schon der letzte Schritt seiner Platte.',
    wait: 'Die Reihenfolge wird noch ausgearbeitet.',
    fixed: 'Dieser Schritt lässt sich nicht verschieben.',
  },
  verbs: {
    earlier: 'früher kleben',
    later: 'später kleben',
    anew: 'die Reihenfolge des Klebens neu finden',
  },
};
