import { expect, it } from 'vitest';
import { isSlide } from '../../src/viewport/wheel-kind.ts';

const turn = { deltaMode: 0, deltaX: 0, deltaY: 0, ctrlKey: false };

// Notches of 120: Microsoft, WM_MOUSEWHEEL, which lets finer wheels tell parts of one. Lines and pages: UI Events, WheelEvent.deltaMode.
it.each([
  ['a notch on Windows', { deltaY: 100, wheelDeltaY: -120 }],
  ['a notch on Linux', { deltaY: -53, wheelDeltaY: 120 }],
  ['a notch on a Mac', { deltaY: 4.000244140625, wheelDeltaY: -12 }],
  ['three quick ones there', { deltaY: 12.000732421875, wheelDeltaY: -36 }],
  ['an eighth of a notch of a fine wheel', { deltaY: 12.5, wheelDeltaY: -15 }],
  ['a hundred and twentieth of one', { deltaY: 5 / 6, wheelDeltaY: -1 }],
  ['three lines', { deltaMode: 1, deltaY: 3, wheelDeltaY: -120 }],
  ['fingers that pinch', { ctrlKey: true, deltaY: 2.5, wheelDeltaY: -7 }],
  ['where notches are not told, as much as a wheel makes', { deltaY: 53 }],
])('a wheel: %s', (_, told) => expect(isSlide({ ...turn, ...told })).toBe(false));

it.each([
  ['a little down', { deltaY: 4, wheelDeltaY: -12 }],
  ['a fast push', { deltaY: 180, wheelDeltaY: -540 }],
  ['a part of a px', { deltaY: 1.5, wheelDeltaY: -5 }],
  ['aside', { deltaX: -7, deltaY: 0 }],
  ['where notches are not told, less than a wheel makes', { deltaY: 3 }],
])('fingers on a trackpad: %s', (_, told) => expect(isSlide({ ...turn, ...told })).toBe(true));
