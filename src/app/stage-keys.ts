import type { LookMove } from '../viewport/bench-contract.ts';
import type { PlaneKeyMove } from '../viewport/plane-moves.ts';

/** Keys that turn the view: by steps, to one of six sides, slowly round, and back to where it was. */
export const TURNS: Readonly<Record<string, LookMove>> = {
  ArrowLeft: 'turn-left',
  ArrowRight: 'turn-right',
  ArrowUp: 'up',
  ArrowDown: 'down',
  '+': 'nearer',
  '=': 'nearer',
  '-': 'farther',
  Home: 'front',
  End: 'back',
  'Shift ArrowLeft': 'left',
  'Shift ArrowRight': 'right',
  'Shift ArrowUp': 'top',
  'Shift ArrowDown': 'bottom',
  Space: 'round',
  Backspace: 'return',
};

/** What hands do on the picture, whatever they hold, and what comes of it. */
export const GESTURES = {
  drag: 'turn',
  finger: 'turn',
  rightDrag: 'aside',
  shiftDrag: 'aside',
  side: 'aside',
  slide: 'aside',
  twoFingers: 'asideAndNearer',
  wheel: 'nearer',
  pinch: 'nearer',
  twice: 'close',
  point: 'read',
  dragSeam: 'seam',
} as const;

/** Up and down move a plane in hand, with Shift by the coarse step; left and right lean it one way, with Shift the other. */
export const PLANE_KEYS: Readonly<Record<string, PlaneKeyMove>> = {
  ArrowUp: 'forth',
  ArrowDown: 'back',
  'Shift ArrowUp': 'forth',
  'Shift ArrowDown': 'back',
  ArrowLeft: 'lean-left',
  ArrowRight: 'lean-right',
  'Shift ArrowLeft': 'lean-up',
  'Shift ArrowRight': 'lean-down',
};
