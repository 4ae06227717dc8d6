import type { DONE_WORDS } from '../done-words.ts';
import type { Translation } from '../language/spoken.ts';
import { pieces } from './count.ts';

/** After „von“: `2 Stücken`. */
const ofPieces = (n: number): string => (n === 1 ? 'einem Stück' : `${n} Stücken`);

export const DONE: Translation<typeof DONE_WORDS> = {
  printed: 'gedruckt',
  cut: 'geschnitten',
  stale: 'gedruckt, aber seither geändert: neu drucken',
  changed: 'geschnitten, aber seither geändert',
  release: 'freigeben',
  tickPrinted: (name) => `${name} ist gedruckt`,
  tickCut: (name) => `${name} ist geschnitten`,
  releasePiece: (name) => `${name} freigeben: Es wird neu geschnitten`,
  state: (printed, stale, cut, changed, all) =>
    [
      `${printed} von ${ofPieces(all)} gedruckt`,
      ...(stale === 0 ? [] : [`${stale} überholt`]),
      ...(cut === 0 ? [] : [`${cut} geschnitten`]),
      ...(changed === 0 ? [] : [`${changed} geschnitten, aber seither geändert`]),
    ].join(', '),
  tickAll: (n) => `${pieces(n)} als gedruckt abhaken`,
  forgetGone: (n) => `${pieces(n)} vergessen, ${n === 1 ? 'das es' : 'die es'} nicht mehr gibt`,
  saveChanged: (n) => `Nur Seiten von ${ofPieces(n)} speichern, PDF`,
};
