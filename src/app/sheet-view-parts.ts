import { nothing, svg } from 'lit';
import type { Placement } from '../model/sheet.ts';
import type { Template } from '../model/template.ts';
import { numberSpot } from '../viewport/number-spot.ts';
import { PLACING_WORDS } from './placing-words.ts';
import { sizeInside } from './number-size.ts';
import { middleOf, onSheet, placeAbout } from './place-on-sheet.ts';
import { cutPaths, placeOnSheet, sheetFromScreen, uprightOn, type SheetFrame } from './sheet-drawing.ts';
import type { PieceInHand } from './sheet-hand.ts';

/** Greatest height of numbers on pieces, px; smaller ones stay within their pieces, too small ones to be read are left to what is said of a piece. */
const MOST_NUMBER_PX = 22;
const LEAST_NUMBER_PX = 5;

/** Number of a piece that is held, as a share of its room: under it stands that it is. */
const HELD_SHARE = 0.7;

/** A piece as it lies on a sheet that is laid over the bench. */
export interface ShownPiece {
  readonly template: Template;
  readonly place: Placement;
  /** As it is heard and seen. */
  readonly name: string;
  readonly number: string | number;
  readonly isHeld: boolean;
  /** In hand: how it lies; null where it is not. */
  readonly lies: PieceInHand['lies'] | null;
  readonly mmPerPx: number;
}

/** The inside of a piece: its outline, the other edge of its leaning cuts, its number, and a mark and word where it is held. */
export function pieceBody({ template, place, number, isHeld, mmPerPx }: ShownPiece, frame: SheetFrame) {
  const { cut, bevel } = cutPaths(template);
  const { x, y, radiusMm } = numberSpot(template);
  const room = isHeld ? HELD_SHARE * radiusMm : Math.min(1.2 * radiusMm, sizeInside(String(number), radiusMm));
  const size = Math.min(MOST_NUMBER_PX * mmPerPx, room);
  const isRead = size >= LEAST_NUMBER_PX * mmPerPx;
  return svg`<path class="body" d=${cut} fill-rule="evenodd" />
    <path class="bevel" d=${bevel} />
    <g transform="translate(${x} ${y}) ${uprightOn(frame, place)}" visibility=${isRead ? 'visible' : 'hidden'}>
      <text font-size=${size} text-anchor="middle" dominant-baseline="central">${number}</text>
      ${
        isHeld
          ? svg`<text class="held" y=${0.85 * size} font-size=${0.6 * size} text-anchor="middle" dominant-baseline="central"
              >⊙ ${PLACING_WORDS.held}</text>`
          : nothing
      }
    </g>`;
}

/** Classes of a piece by how it lies. */
export const stateOf = ({ lies, isHeld }: ShownPiece): string =>
  [
    lies === null ? '' : 'in-hand',
    lies === null || lies === 'well' || lies === 'wait' ? '' : 'is-over',
    lies === 'wait' ? 'is-waiting' : '',
    isHeld ? 'is-held' : '',
  ].join(' ');

/**
 * A stalk with a knob to turn a piece by, and while it is turned the piece as it would lie.
 * @param byRad  how far it is turned by the handle; null where the handle is not in hand.
 */
export function turnHandle(
  template: Template,
  hand: PieceInHand,
  frame: SheetFrame,
  byRad: number | null,
  take: (event: PointerEvent) => void,
) {
  const { minX, minY, maxX, maxY } = template.box;
  const middle = middleOf(template);
  const long = Math.hypot(maxX - minX, maxY - minY) / 2 + frame.height / 40;
  const [mx, my] = onSheet(middle, hand);
  // Upward in the picture before it is turned; downward where there is no room above.
  const [ux, uy] = sheetFromScreen(frame, 0, (frame.isTurned ? mx : frame.height - my) > long ? 1 : -1);
  const angle = Math.atan2(uy, ux) + (byRad ?? 0);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const knob = `M${mx + long * c} ${my + long * s}h0`;
  const ghost = placeAbout(middle, hand, { turnRad: hand.turnRad + (byRad ?? 0), isFlipped: hand.isFlipped });
  return svg`${
    byRad === null
      ? nothing
      : svg`<g class="ghost" transform=${placeOnSheet(ghost)}><path d=${cutPaths(template).cut} /></g>`
  }
    <g class="handle" aria-hidden="true" @pointerdown=${take}>
      <title>${PLACING_WORDS.handle}</title>
      <path class="stalk" d="M${mx + (long * c) / 2} ${my + (long * s) / 2}L${mx + long * c} ${my + long * s}" />
      <path class="rim" d=${knob} /><path class="knob" d=${knob} />
    </g>`;
}
