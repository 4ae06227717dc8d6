import { fail, type Fail } from '../../base/result.ts';

/** More pixels than any camera in a pocket takes: 64 million grey values are 256 MB. */
const MOST_PIXELS = 2 ** 26;
/** Pixels along one side. */
const MOST_SIDE = 65_535;

/** The picture cannot be read although it is of a kind that is. @param what  what is wrong, in a few words. */
export const brokenPicture = (what: string): Fail =>
  fail('artwork/picture-broken', `The picture is broken (${what}): save it again from the program it was made in.`);

export const cutOffPicture = (): Fail =>
  fail('artwork/picture-cut-off', 'The picture ends too early: copy or save the file again.');

/** @param what  the kind, as a noun. */
export const unreadKind = (what: string): Fail =>
  fail('artwork/picture-kind', `This is ${what}, which is not read: save it as PNG or as a plain JPEG.`);

/** A problem where a size cannot be or is too much to hold; null where it may be read. Asked before anything is made room for. */
export function sizeFault(widthPx: number, heightPx: number): Fail | null {
  if (!(widthPx >= 1 && heightPx >= 1)) return brokenPicture('it has no size');
  if (widthPx > MOST_SIDE || heightPx > MOST_SIDE || widthPx * heightPx > MOST_PIXELS)
    return fail(
      'artwork/picture-too-large',
      `The picture says it is ${widthPx} x ${heightPx} pixels; ${Math.floor(MOST_PIXELS / 1e6)} million are read at most: save it smaller.`,
    );
  return null;
}
