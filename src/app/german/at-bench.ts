import { settingText } from '../../base/lean-words.ts';
import type { AT_BENCH_WORDS } from '../at-bench/at-bench-words.ts';
import type { AT_SHOP_WORDS } from '../at-shop/at-shop-words.ts';
import type { TranslationInPart } from '../language/spoken.ts';
import { count, pages } from './count.ts';
import { LEAN } from '../../base/german/lean.ts';

const SIDES = { face: 'Sichtseite', back: 'Rückseite' };
const lines = (n: number): string => count(n, 'Zeile', 'Zeilen');

export const AT_BENCH: TranslationInPart<typeof AT_BENCH_WORDS> = {
  open: 'An der Werkbank',
  verb: 'zur Werkbank: die Arbeit Zeile für Zeile',
  label: 'An der Werkbank',
  leave: 'Auftragsblatt',
  leaveLabel: 'Zurück zum Auftragsblatt',
  phases: {
    print: 'Drucken',
    cut: 'Schneiden',
    bevel: 'Gehrungen',
    form: 'Formen',
    fit: 'Passprobe',
    glue: 'Kleben',
    parts: 'Teile',
    finish: 'Oberfläche',
  },
  kinds: 'Arten der Arbeit',
  share: (done, all) => `${done}/${all}`,
  far: (done, all) => `${done} von ${lines(all)} erledigt`,
  place: (phase, at, all) => `${phase}, ${at} von ${all}`,
  spoken: (title, phase, at, all) => `${title}. ${phase}, ${at} von ${all}.`,
  back: 'Zurück',
  next: 'Weiter',
  done: 'Erledigt',
  isDone: 'Zurücknehmen',
  isDoneLabel: 'Haken zurücknehmen: Diese Zeile ist erledigt',
  actions: 'Abhaken, weiter, zurück',
  state: {
    done: 'erledigt',
    changed: 'Abgehakt, aber seither geändert: neu zu machen.',
  },
  changedLines: (n, first) => `Seit dem Abhaken geändert: ${first}${n === 1 ? '' : ` und ${n - 1} weitere`}.`,
  goneLines: (n) =>
    n === 1 ? '1 abgehakten Schritt gibt es nicht mehr.' : `${n} abgehakte Schritte gibt es nicht mehr.`,
  see: 'Den ersten ansehen',
  forget: 'Vergessen',
  empty: 'Noch nichts zu tun: Der Auftrag braucht zuerst Stücke.',
  making: 'Wird ausgearbeitet …',
  keys: 'Die Leertaste hakt ab, Pfeiltasten gehen weiter und zurück, Esc führt zum Auftragsblatt. Oder wischen.',
  awake: {
    on: 'Der Bildschirm bleibt wach.',
    off: 'Dieser Browser lässt den Bildschirm einschlafen: am Tablet einstellen, dass er wach bleibt.',
  },

  pages: {
    title: (n) => `${pages(n)} drucken`,
    save: 'Seiten speichern, PDF',
  },
  square: {
    title: 'Das Quadrat messen',
    text: 'Auf der ersten Seite. Beide Seiten müssen so lang sein, wie daneben gedruckt ist. Sonst neu drucken, ohne Anpassen an die Seite, oder den Drucker unter „Papier“ ausmessen.',
  },
  cut: {
    title: (number) => `${number} schneiden`,
    figures: (quantity, thickness) => `${quantity}× aus ${thickness}`,
    hands: { left: 'linke Hand', right: 'rechte Hand' },
    traced: {
      face: 'Auf der Sichtseite angezeichnet: diese Seite nach außen.',
      back: 'Auf der Rückseite angezeichnet: Die Schablone liegt gespiegelt.',
    },
    straight: 'Gerade schneiden: Gehrungen kommen danach.',
    onSheet: (sheets) => `Auf ${sheets.join(' und ')}.`,
    sheet: (n, of) => (of === 1 ? 'der einzigen Platte' : `Platte ${n} von ${of}`),
    inHand: (sheet, label) => `${sheet} (${label})`,
    nowhere: 'Noch auf keiner Platte.',
    picture: (name) => `${name}, wie es geschnitten wird, mit seinen Marken`,
  },
  bevel: {
    title: (number) => `${number} gehren`,
    under: 'Nach innen: Der Schnitt läuft unter die angezeichnete Seite.',
    strip: (bevelDeg) => `Beide langen Kanten ${settingText(bevelDeg, LEAN)}`,
    leans: LEAN,
    edges: (setting, lengths) =>
      `${setting}: ${lengths.length === 1 ? 'die Kante von' : 'die Kanten von'} ${lengths.join(', ')}`,
  },
  form: {
    title: (number) => `${number} formen`,
    grooves: (n, side, depth, width) =>
      `${count(n, 'Nut', 'Nuten')} von der ${SIDES[side]}: bis ${depth} tief und ${width} breit.`,
    kerfs: (n, side, depth) => `${count(n, 'Schlitz', 'Schlitze')} von der ${SIDES[side]}, ${depth} tief.`,
    scores: (n, depth) => `${count(n, 'Ritzlinie', 'Ritzlinien')} in der Sichtseite, bis ${depth} tief.`,
    bend: (radius) => `Biegen: am engsten auf einen Radius von ${radius}.`,
  },
  fit: {
    title: 'Trocken zusammensetzen',
    text: 'Die Stücke ohne Kleber zusammenheften und an jeder Naht entlangsehen.',
    worst: (letter, one, other) => `Zuerst Naht ${letter} ansehen, ${one} zu ${other}.`,
  },
  glue: {
    seams: (letters) => `${letters.join(', ')} kleben`,
    step: (number) => `Schritt ${number} kleben`,
    title: (number, title) => `${number}. ${title}`,
    picture: (number) => `Das Requisit nach Schritt ${number} des Klebens`,
    drawing: 'Das Bild wird gezeichnet …',
    warmed: 'Erwärmt, bevor der Kleber geöffnet wurde:',
  },
  part: {
    title: (at, of) => `Schritt ${at} von ${of}`,
    copies: (n) => `${n}-mal, einmal für jedes.`,
    pieces: (numbers) => (numbers.length === 1 ? `Stück ${numbers[0]}.` : `Stücke ${numbers.join(', ')}.`),
  },
  finish: {
    clay: 'Modellieren',
    bare: 'Abkleben',
    seal: 'Versiegeln',
    prime: 'Grundieren',
    paint: 'Streichen',
    colour: 'Streichen',
    clear: 'Klarlack',
  },
  copies: {
    label: 'Kopien, die fertig sind',
    copy: (n, of) => `Kopie ${n} von ${of}`,
  },
  ticks: {
    label: 'Wie weit dieses Stück ist',
    kinds: {
      printed: 'gedruckt',
      cut: 'geschnitten',
      bevelled: 'mit Gehrung',
      formed: 'geformt',
      glued: 'geklebt',
    },
    stands: { done: 'ja', open: 'noch nicht', changed: 'seither geändert' },
  },
  mind: 'Achtung:',
  end: {
    title: 'Alles erledigt',
    open: (n) => `${n === 1 ? '1 Zeile ist' : `${n} Zeilen sind`} noch offen`,
    go: 'Zur ersten gehen',
  },
};

export const AT_SHOP: TranslationInPart<typeof AT_SHOP_WORDS> = {
  open: 'Im Laden',
  verb: 'zur Liste für den Laden',
  heading: 'Im Laden',
  none: 'Nichts zu kaufen.',
  sheets: (sheets, size) => (size === '' ? sheets : `${sheets}, ${size}`),
  short: (have) => `${have} vorhanden`,
  shortWet: 'weniger als das vorhanden',
  left: (n, all) => (n === 0 ? 'Alles ist gekauft.' : `${n} von ${all} noch zu kaufen.`),
  share: 'Liste teilen',
  copy: 'Liste kopieren',
  copied: 'Kopiert: einfügen, wo sie gebraucht wird.',
  byHand: 'Von hier kopieren:',
  text: 'Die Liste als Text',
  title: (job) => `${job}: zu kaufen`,
  line: (isBought, much, what) => `${isBought ? '☑' : '☐'} ${much}, ${what}`,
};
