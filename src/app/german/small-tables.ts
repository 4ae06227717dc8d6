import { formatNumber } from '../../base/format-length.ts';
import type { BUILD_UP_WORDS } from '../build-up-words.ts';
import type { Translation } from '../language/spoken.ts';
import type { MOCK_UP_WORDS } from '../mock-up-words.ts';
import type { NEUTRAL_WORDS } from '../neutral-words.ts';
import type { OFFCUT_WORDS } from '../offcut-words.ts';
import type { PART_JOIN_WORDS } from '../part-join-words.ts';
import type { PRINTER_WORDS } from '../printer-words.ts';
import type { RULE_WORDS } from '../rule-words.ts';
import type { RULED_WORDS } from '../ruled-words.ts';
import type { SCORE_WORDS } from '../score-words.ts';
import type { SIMPLIFY_WORDS } from '../simplify-words.ts';
import type { SPRING_WORDS } from '../spring-words.ts';
import type { TWIN_WORDS } from '../twin-words.ts';
import { count, edges } from './count.ts';

export const NEUTRAL: Translation<typeof NEUTRAL_WORDS> = {
  heading: 'Die Lage der neutralen Schicht messen',
  how: 'Den Probestreifen drucken, um drei oder mehr runde Dinge biegen und eintragen, was gemessen wurde.',
  print: 'Probestreifen speichern, PDF',
  length: 'Länge des Streifens',
  thickness: 'Seine Dicke',
  bend: (n) => `Biegung ${n}`,
  across: 'Durchmesser des runden Dings',
  arc: 'Von Marke zu Marke',
  remove: 'entfernen',
  removeBend: (n) => `Biegung ${n} entfernen`,
  answer: (k, plusMinus) => `k ist ${k}, mit einer Unsicherheit von ${plusMinus} (19 von 20 Malen).`,
  apart: (bends) =>
    bends.length === 1
      ? `Biegung ${bends[0] + 1} weicht von den anderen ab: noch einmal messen.`
      : `Die Biegungen ${bends.map((i) => i + 1).join(', ')} weichen von den anderen ab: noch einmal messen.`,
  use: (k) => `${k} für diesen Schaumstoff verwenden`,
  used: 'Für diesen Schaumstoff in Gebrauch',
};

export const PRINTER: Translation<typeof PRINTER_WORDS> = {
  printer: 'Drucker',
  any: 'beliebig, ohne Korrektur',
  another: 'einen Drucker ausmessen …',
  heading: (name) => (name === null ? 'Einen Drucker ausmessen' : `${name} noch einmal ausmessen`),
  how: 'Die erste Seite mit 100 % drucken und ihr Quadrat mit einem guten Lineal messen, möglichst auf ein Fünftel Millimeter.',
  howAgain: (name) =>
    `Das Quadrat auf einer ersten Seite messen, auf der „for ${name}“ steht; was noch fehlt, kommt dazu.`,
  name: 'Name des Druckers',
  across: 'Quer, gemessen',
  up: 'Hoch, gemessen',
  rising: 'Unten links bis oben rechts',
  falling: 'Oben links bis unten rechts',
  diagonals: 'Beide Diagonalen oder keine: Mit ihnen wird auch ein schiefer Druck gerichtet.',
  keep: (name) => (name === '' ? 'Seiten für diesen Drucker zeichnen' : `Seiten für ${name} zeichnen`),
  forget: (name) => `${name} vergessen`,
  now: (across, up, lean) =>
    `Druckt ${across} quer und ${up} hoch${lean === null ? '' : `, schief um ${lean}`}; die Seiten werden gegensinnig gezeichnet.`,
};

export const OFFCUT: Translation<typeof OFFCUT_WORDS> = {
  keep: (size) => `den Rest ins Regal legen, ${size}`,
  why: 'Er zählt beim nächsten Auftrag als vorhandener Schaumstoff; dieser wird nicht darauf gelegt.',
  uncut: (pieces) =>
    pieces === 1
      ? 'Ein Stück darauf ist noch nicht als geschnitten abgehakt.'
      : `${pieces} Stücke darauf sind noch nicht als geschnitten abgehakt.`,
  kept: (name) => `Im Regal: ${name}.`,
  takeBack: 'herausnehmen',
  name: (job, sheet) => `Reststück von ${job}, Platte ${sheet}`,
};

export const MOCK_UP: Translation<typeof MOCK_UP_WORDS> = {
  heading: 'Probemodell aus Karton',
  what: 'Dieselben Stücke kleiner, neu ausgelegt für Karton mit geraden Kanten: drucken, schneiden, ritzen, kleben und in zehn Minuten sehen, wie sie schließen. Nicht für Schaumstoff, auch nicht vergrößert.',
  scale: 'Maßstab',
  card: 'Dicke des Kartons',
  save: 'Probemodell speichern, PDF',
  verb: 'ein Probemodell aus Karton machen',
  begun: 'Die Stücke werden für Karton ausgelegt.',
  saved: (name) => `${name} ist gespeichert: mit 100 % auf Karton drucken.`,
};

export const BUILD_UP: Translation<typeof BUILD_UP_WORDS> = {
  name: 'Kern',
  add: 'Einen Kern aufbauen',
  addWhy: 'Schaumstoff, Lage um Lage auf ein Rohr oder einen Stab gewickelt.',
  core: 'Kern',
  pipe: 'Rohr oder Stab',
  byDiameter: 'nach Durchmesser',
  diameter: 'Durchmesser',
  long: 'Länge über alles',
  built: 'Darauf aufgebaut',
  profile: 'Profil: Länge und Radius, mm',
  profileMeans: 'Wie 0:26, 300:22: Radius 26 am Anfang, 22 bei 300. Nach ~ geht es glatt weiter.',
  rule: 'Schaumstoff und Profil',
  rules: {
    sand: 'wird darauf abgeschliffen',
    middle: 'eine halbe Platte darüber oder darunter',
    fill: 'wird darauf aufgefüllt',
  },
  wound: 'Gewickelter Streifen',
  wind: 'Einen Streifen herumwickeln',
  unwind: 'den Streifen weglassen',
  width: 'Breite',
  pitch: 'Steigung',
  overlap: 'Überlappung',
  side: (core, layers) => `Der Kern, längs seiner Achse geschnitten: ${core}, ${count(layers, 'Lage', 'Lagen')}`,
  sideWords: 'Kästen sind Lagen, die breite Linie ist die fertige Oberfläche.',
};

export const PART_JOIN: Translation<typeof PART_JOIN_WORDS> = {
  list: 'Wie Teile verbunden sind',
  hole: (part, through) => `${part} geht durch ${through}`,
  seat: (part, on) => `${part} sitzt auf ${on}`,
  travel: 'Das Requisit lässt sich für die Reise zerlegen',
  lost: 'ein Teil, das fehlt',
  room: 'Luft ringsum',
  side: 'Auf der',
  sides: { face: 'Sichtseite', back: 'Rückseite' },
  remove: 'vergessen',
};

export const RULED: Translation<typeof RULED_WORDS> = {
  paper: 'Lange gerade Streifen',
  ways: { tell: 'mit dem Lineal, im Plan genannt', print: 'gedruckt' },
};

export const RULE: Translation<typeof RULE_WORDS> = {
  summary: 'Regeln der Werkstatt',
  why: 'Wann das Programm etwas sagt, und wie es nutet und markiert. Veröffentlichte Grenzwerte für EVA-Schaumstoff fanden sich nicht: eintragen, was sich an der Werkbank zeigt. Sie gelten nur für diesen Schaumstoff.',
  foam: 'Regeln für',
  groups: { give: 'Wie weit der Schaumstoff nachgibt', grooves: 'Nuten und Schlitze', saw: 'Säge und Marken' },
  fields: {
    stretchNoticePct: 'Dehnung oder Stauchung, Hinweis ab, Prozent',
    stretchTooMuchPct: 'Dehnung oder Stauchung, zu viel ab, Prozent',
    bendNoticePct: 'Außenhaut beim Biegen, Hinweis ab, Prozent',
    bendTooMuchPct: 'Außenhaut beim Biegen, zu viel ab, Prozent',
    foldLimitDeg: 'Falze nuten, die schärfer sind als, Grad',
    panelFlatDeg: 'Ein Feld gilt als flach bei Neigung bis, Grad',
    hingeMm: 'Rest unter einer Nut',
    leastHingeMm: 'Reißt unter',
    kerfMm: 'Breite eines Schlitzes',
    bevelLimitDeg: 'Die Säge neigt sich höchstens, Grad',
    narrowThicknesses: 'Ein Stück ist schmal unter, Vielfaches seiner Dicke',
    markSpacingMm: 'Passmarken höchstens auseinander',
    markLeastSeamMm: 'Passmarken an Nähten ab',
  },
  wrong: (least, most) => `Eine Zahl von ${formatNumber(least)} bis ${formatNumber(most)}.`,
  usual: (value) => `üblich ${value}`,
  reset: 'wieder die üblichen Regeln',
};

export const SCORE: Translation<typeof SCORE_WORDS> = {
  verb: 'ritzen statt trennen',
  heading: 'Ritzlinien, in die Sichtseite geschnitten und mit Wärme geöffnet. Der Schaumstoff bleibt dort zusammen.',
  name: (number, n) => `Ritzlinie ${number}, ${edges(n)}`,
  depth: 'Tiefe des Schnitts',
  open: 'Breite, wenn geöffnet',
  part: 'hier trennen',
  remove: 'entfernen',
  of: (what, name) => `${what}: ${name}`,
};

export const SIMPLIFY: Translation<typeof SIMPLIFY_WORDS> = {
  verb: 'Modell für Papier vereinfachen',
  heading: 'Für Papier vereinfachen',
  now: (triangles) => `${formatNumber(triangles)} Dreiecke`,
  why: 'Ein dichtes Modell braucht lange, und seine Umrisse werden ausgefranst. Knicke, Marken, Grenzen von Flächen und offene Kanten bleiben, und beide Seiten eines Spiegels bleiben gleich.',
  triangles: 'Dreiecke, die genügen',
  wrong: (least) => `Eine ganze Zahl ab ${least}.`,
  deviation: 'oder höchstens verschoben um',
  off: 'nehmen, wie es ist',
};

export const SPRING: Translation<typeof SPRING_WORDS> = {
  heading: 'Diese Verbindungen zuerst erwärmen oder abkleben',
  seam: (letter) => `Naht ${letter}`,
  pull: (newtonPerCm) => `${newtonPerCm}\u00a0N/cm`,
  letGo: (length) => `losgelassen stehen ihre Kanten bis ${length} auseinander`,
  way: (way) =>
    ({
      opensFace: 'will sich an der Sichtseite öffnen',
      opensBack: 'will sich an der Rückseite öffnen',
      apart: 'wird auseinandergezogen',
      slides: 'will an sich entlanggleiten',
      lifts: 'will sich an einer Seite abheben',
    })[way],
  more: (n) => `${n} weitere`,
  guide:
    'Ein Anhalt: Schaumstoff üblicher Steife, kalt gebogen, ganz elastisch und in Form gehalten. Warmer Schaumstoff zieht viel schwächer. Genutete Stücke biegen sich in ihren Nuten und fehlen hier.',
};

export const TWIN: Translation<typeof TWIN_WORDS> = {
  paper: 'Gespiegelte Stücke',
  ways: { once: 'eine Schablone, gewendet', each: 'je eine Schablone' },
  turnedFrom: (number) => `mit der Schablone von ${number} geschnitten, gewendet`,
  turnedFor: (number) => `seine Schablone schneidet gewendet auch ${number}`,
  apart: (number, why) => `eigene Schablone, nicht die von ${number} gewendet: ${why}`,
};
