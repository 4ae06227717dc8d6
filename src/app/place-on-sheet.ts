import type { Template } from '../model/template.ts';
import type { PieceInHand } from './sheet-hand.ts';

type Place = Pick<PieceInHand, 'x' | 'y' | 'turnRad' | 'isFlipped'>;

/** The middle of a template, mm: a piece in hand is turned about it. */
export function middleOf(template: Template | undefined): readonly [number, number] {
  if (template === undefined) return [0, 0];
  const { minX, minY, maxX, maxY } = template.box;
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}

/** A place of a template on the sheet. */
export function onSheet([x, y]: readonly [number, number], place: Place): readonly [number, number] {
  const [c, s] = [Math.cos(place.turnRad), Math.sin(place.turnRad)];
  const own = place.isFlipped ? -x : x;
  return [place.x + c * own - s * y, place.y + s * own + c * y];
}

/** The piece turned otherwise, about its middle. */
export function placeAbout(
  middle: readonly [number, number],
  hand: PieceInHand,
  next: Pick<PieceInHand, 'turnRad' | 'isFlipped'>,
): PieceInHand {
  const [x, y] = onSheet(middle, hand);
  const [nextX, nextY] = onSheet(middle, { ...hand, ...next });
  return { ...hand, ...next, x: hand.x + x - nextX, y: hand.y + y - nextY };
}
