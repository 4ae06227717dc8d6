/** What is known of a turn of the wheel; browsers tell fingers on a trackpad as one too. */
export interface WheelTurn extends Pick<WheelEvent, 'deltaMode' | 'deltaX' | 'deltaY' | 'ctrlKey'> {
  /** The same in 120ths of a notch, upwards; not in the standard, but told by all browsers. */
  readonly wheelDeltaY?: number;
}

const IN_PX = 0;
/** Fingers come in px, and browsers make 40 px a notch of 120 for them; a wheel has fewer for its px, however fine its steps are. */
const OF_FINGERS = 3;
const ROUNDING = 1.5;
/** One notch of a wheel on a Mac, px: there too browsers make three of one. */
const MAC_NOTCH_PX = 4.000244140625;
/** Where no notches are told: fingers begin with less than any wheel, px. */
const SLIDE_PX = 30;

/**
 * Whether two fingers slide on a trackpad, or a wheel is turned. Notches of 120, and parts of one by finer wheels, are those of Windows
 * (Microsoft, WM_MOUSEWHEEL), which browsers tell everywhere.
 */
export function isSlide({ deltaMode, deltaX, deltaY, ctrlKey, wheelDeltaY }: WheelTurn): boolean {
  if (ctrlKey || deltaMode !== IN_PX) return false;
  if (deltaX !== 0) return true;
  if (wheelDeltaY === undefined) return Math.abs(deltaY) < SLIDE_PX;
  const isInNotches = !Number.isInteger(deltaY) && Number.isInteger(deltaY / MAC_NOTCH_PX);
  return !isInNotches && Math.abs(Math.abs(wheelDeltaY) - OF_FINGERS * Math.abs(deltaY)) < ROUNDING;
}
