import { spoken } from './language/spoken.ts';

/** Texts about how parts have to do with each other. */
export const PART_JOIN_WORDS = spoken('part-join', {
  list: 'How parts are joined',
  hole: (part: string, through: string) => `${part} goes through ${through}`,
  seat: (part: string, on: string) => `${part} sits on ${on}`,
  travel: 'The prop comes apart to travel',
  lost: 'a part that is gone',
  room: 'Room all round',
  side: 'On its',
  sides: { face: 'face', back: 'back' },
  remove: 'forget it',
} as const);
