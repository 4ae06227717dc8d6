import type { TranslationInPart } from '../language/spoken.ts';
import type { VERDICT_WORDS } from '../verdict/verdict-words.ts';
import { count, pages, pieces } from './count.ts';

const things = (n: number): string => (n === 1 ? 'eine Sache' : `${n} Sachen`);

export const VERDICT: TranslationInPart<typeof VERDICT_WORDS> = {
  next: {
    open: () => 'ein Modell öffnen',
    read: () => 'ansehen, warum die Datei nicht lesbar ist',
    size: () => 'Größe festlegen',
    part: () => 'teilen',
    take: () => 'einen der Vorschläge übernehmen',
    foam: () => 'Schaumstoff wählen',
    sheets: () => 'auf die Platten bringen',
    see: (n) => `${count(n, 'Befund', 'Befunde')} ansehen`,
    wait: () => 'wird ausgearbeitet …',
    print: () => 'Schablonen zum Drucken speichern',
    changed: (n) => `Seiten von ${n === 1 ? 'einem Stück' : `${n} Stücken`} neu speichern`,
    tick: (n) => `${pieces(n)} als gedruckt abhaken`,
    cut: (n) => `${pieces(n)} schneiden`,
    glue: () => 'kleben',
    finish: (n) => `fertigstellen: noch ${count(n, 'Schritt', 'Schritte')}`,
    done: () => 'Alles ist getan.',
  },
  nextIs: (what) => `Als Nächstes: ${what}`,
  nextLabel: 'Was am besten als Nächstes kommt',

  heading: 'Wird es gehen?',
  answer: {
    waits: 'Noch nichts zu drucken.',
    works: 'Es wird gehen.',
    worksIf: (n) => `Es wird gehen, wenn ${things(n)} beachtet ${n === 1 ? 'wird' : 'werden'}.`,
    worksNot: (why) => `Es wird nicht gehen: ${why}`,
    worksNotFor: (n) => `Es wird nicht gehen: ${things(n)} ${n === 1 ? 'hält' : 'halten'} es auf.`,
  },
  groups: { error: 'Halt', warning: 'Ansehen', note: 'Hinweis' },
  group: (name, n) => `${name}, ${n}`,
  wholeJob: 'ganzer Auftrag',
  piece: (name) => `Stück ${name}`,
  seam: (letter) => `Naht ${letter}`,
  page: (name) => `Seite ${name}`,
  checked: (good, all) => (good === all ? `${all} Prüfungen, alle gut` : `${all} Prüfungen, ${good} gut`),
  good: 'gut',
  notGood: 'nicht gut',
  checks: {
    scale: (longest) => `Im wahren Maßstab: ${longest} an der längsten Seite.`,
    seams: (difference) => `Beide Seiten jeder Naht stimmen auf ${difference} überein.`,
    gaps: (gap, overlap) => `Trocken zusammengesetzt: Spalte höchstens ${gap}, Überstände höchstens ${overlap}.`,
    stretch: (stretch, squash) => `Der Schaumstoff gibt höchstens ${stretch} Dehnung und ${squash} Stauchung nach.`,
    bends: (strain, radius) => `Engste Biegung: ${radius}, Außenhaut um ${strain} beansprucht.`,
    sheets: (n, all) =>
      `${count(n, 'Platte fasst', 'Platten fassen')} ${all === 1 ? 'das eine Stück' : `alle ${pieces(all)}`}.`,
    pages: (n) => `${pages(n)}, das Maßquadrat darunter.`,
    twins: (n) => `${n} Gegenstücke sind als links oder rechts bezeichnet.`,
    cautions: () => 'Warnungen zum Schneiden, Erwärmen und Kleben stehen im Bauplan.',
  },

  ask: {
    question: (n) => `${n === 1 ? 'Eine Sache hält' : `${n} Sachen halten`} es auf. Die Schablonen trotzdem speichern?`,
    yes: 'trotzdem speichern',
    no: 'ansehen, was es aufhält',
  },
  verbs: {
    see: 'Wird es gehen? Alle Befunde ansehen',
    anyway: 'Schablonen speichern, obwohl etwas es aufhält',
  },

  standing: {
    missing: 'Es wartet auf das, was davor kommt.',
    before: 'was zuerst kommt',
    wrong: 'Hier stimmt etwas nicht.',
    see: 'alle Befunde ansehen',
  },
};
