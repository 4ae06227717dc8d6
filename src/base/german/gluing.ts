import { PLACES } from './places.ts';

/** A line and what it is in German; what stands in brackets is kept. */
type Phrase = readonly [english: RegExp, german: string];

/** Whole lines of the order of gluing: titles of steps and batches, and what is warmed. */
const LINES: readonly Phrase[] = [
  [/^(\d+\. )?Join (unit \w+ \([^)]*\)|.+?) to the rest$/, '$1$2 mit dem Rest verbinden'],
  [/^(\d+\. )?Join (unit \w+ \([^)]*\)|.+?) to (.+?): unit (\w+)$/, '$1$2 mit $3 verbinden: Gruppe $4'],
  [/^(\d+\. )?Join (unit \w+ \([^)]*\)|.+?) to (.+)$/, '$1$2 mit $3 verbinden'],
  [/^(\d+\. )?Close (.+?) along ([A-Z, ]+)$/, '$1$2 an $3 schließen'],
  [/^(\d+\. )?Close (.+)$/, '$1$2 schließen'],
  [/^(\d+\. )?Lay (.+) on the sheet below$/, '$1$2 auf die untere Platte legen'],
  [/^Batch (\d+)(, .+)?: step (\d+), (.+) of seam$/, 'Durchgang $1$2: Schritt $3, $4 Naht'],
  [/^Batch (\d+)(, .+)?: steps (\d+) to (\d+), (.+) of seam$/, 'Durchgang $1$2: Schritte $3 bis $4, $5 Naht'],
  [
    /^Brush both edges of every seam, in the order of the steps: about (\d+ min)\. Join from (\d+ min) on, counted from the first stroke; all is shut after about (\d+ min)\.$/,
    'Beide Kanten jeder Naht einstreichen, in der Reihenfolge der Schritte: etwa $1. Fügen ab $2, vom ersten Strich an gezählt; alles ist nach etwa $3 zu.',
  ],
  [/^(.+): bend it, to a radius of (.+) at the tightest\.$/, '$1: biegen, am engsten auf einen Radius von $2.'],
  [/^(.+): warm its scored lines until they open\.$/, '$1: die Ritzlinien erwärmen, bis sie sich öffnen.'],
  [/^(.+): form it (.+), where the foam gives (.+)\.$/, '$1: formen, $2, wo der Schaumstoff $3 nachgibt.'],
];

/** What is said of one seam of a step, part by part. */
const RUN_LINE = /^Seam (\w+), /;
const RUN: readonly Phrase[] = [
  [RUN_LINE, 'Naht $1, '],
  [/\bmarks (\d+) to (\d+)/, 'Marken $1 bis $2'],
  [/\bmark (\d+)/g, 'Marke $1'],
  [/, butt,/, ', Stoß,'],
  [/, lap,/, ', Überlappung,'],
  [/, rebate,/, ', Stufenfalz,'],
  [/, step,/, ', Stufe,'],
  [/, square\./, ', gerade.'],
  [/, bevels (.+?) and (.+?)\./, ', Gehrungen $1 und $2.'],
  [/, bevel (.+?)\. /, ', Gehrung $1. '],
  [/(\d°) to (\d)/g, '$1 bis $2'],
  [/ Touch first at Marke (\d+),/, ' Zuerst an Marke $1 ansetzen,'],
  [/ Touch first half-way,/, ' Zuerst in der Mitte ansetzen,'],
  [/ Touch first at the corner with (\w+),/, ' Zuerst an der Ecke mit $1 ansetzen,'],
  [/ Touch first at the corner,/, ' Zuerst an der Ecke ansetzen,'],
  [/ Touch first at its end,/, ' Zuerst an ihrem Ende ansetzen,'],
  [/ roll on from there\./, ' von dort aus zurollen.'],
  [/ roll both ways\./, ' nach beiden Seiten zurollen.'],
  [/ Its strip goes between\./, ' Ihr Streifen kommt dazwischen.'],
  [/ Its (\d+) strips go between\./, ' Ihre $1 Streifen kommen dazwischen.'],
  [/ Fill the gap at the face afterwards\./, ' Den Spalt auf der Sichtseite danach füllen.'],
  [/ Fill the gap at the back afterwards\./, ' Den Spalt auf der Rückseite danach füllen.'],
  [/ Lay the trim strip over the gap at the face\./, ' Die Zierleiste über den Spalt auf der Sichtseite legen.'],
  [/ Lay the trim strip over the gap at the back\./, ' Die Zierleiste über den Spalt auf der Rückseite legen.'],
  [
    / No hand reaches it from within any more: press it from outside\./,
    ' Von innen kommt keine Hand mehr heran: von außen andrücken.',
  ],
];

/** Groups of pieces within a line, and runs of their numbers. */
const UNITS = /\bunit (\w+) \(([^)]*)\)/g;

/** @returns a line of the order of gluing in German; null for other texts. */
export function gluingText(text: string): string | null {
  if (RUN_LINE.test(text)) return say(text, RUN);
  const line = LINES.find(([english]) => english.test(text));
  return line === undefined
    ? null
    : say(placed(text), [line]).replace(
        UNITS,
        (_, unit: string, pieces: string) => `Gruppe ${unit} (${pieces.replaceAll(' to ', ' bis ')})`,
      );
}

/** The place in a line about warming, said first: it stands within. */
const placed = (text: string): string =>
  text.replace(/: form it (.+?), where/, (_, place: string) => `: form it ${PLACES[place] ?? place}, where`);

const say = (text: string, phrases: readonly Phrase[]): string =>
  phrases.reduce((said, [english, german]) => said.replace(english, german), text);
