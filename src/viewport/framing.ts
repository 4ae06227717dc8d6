import { Vector3, type Box3 } from 'three';
import type { BenchInsets, FrameTarget } from './bench-contract.ts';
import { framed, isInSight, isSameView, type Orbit } from './orbit.ts';
import type { Studio } from './studio.ts';

/** Share of the free part of the picture that is left round what is framed. */
const MARGIN = 0.06;
/** However much panels cover, what is framed is given no less than this share of the picture. */
const LEAST_FREE = 0.4;
/** A panel that covers so much more or less is made room for at once; for larger ones the picture goes there, px. */
const SMALL_CHANGE_PX = 64;

/** What is lower than this share of its breadth lies flat, and is looked at from no lower than so, radians. */
const FLAT_SHARE = 0.15;
const LEAST_PITCH_ON_FLAT = 0.5;

/** Brings things into the picture, between the panels that lie over it. */
export class Framing {
  readonly #studio: Studio;
  readonly #boxesOf: (what: FrameTarget) => readonly Box3[];
  #insets: BenchInsets = { topPx: 0, bottomPx: 0 };
  /** What was framed last, and the view that was. */
  #last: { readonly what: FrameTarget; readonly orbit: Orbit } | null = null;

  #isAtWork = false;
  /** The view before the last one that was asked for, and how high in the picture it was. */
  #before: { readonly orbit: Orbit; readonly risePx: number } | null = null;

  constructor(studio: Studio, boxesOf: (what: FrameTarget) => readonly Box3[]) {
    this.#studio = studio;
    this.#boxesOf = boxesOf;
  }

  /** Panels came to lie over the picture, or went: a view that is as it was framed is framed anew; one that the maker turned stays. */
  setInsets(insets: BenchInsets): void {
    const before = this.#insets;
    this.#insets = insets;
    const change = Math.abs(insets.topPx - before.topPx) + Math.abs(insets.bottomPx - before.bottomPx);
    if (change >= 1) this.again(change < SMALL_CHANGE_PX);
  }

  /** What was framed last and is seen as it was then; null once the maker has turned to something else. */
  get seen(): FrameTarget | null {
    return this.#last !== null && isSameView(this.#last.orbit, this.#studio.goal) ? this.#last.what : null;
  }

  /** What is framed anew when it changes; null where the maker turned or works. */
  get held(): FrameTarget | null {
    return this.#isAtWork ? null : this.seen;
  }

  /** The maker has something in hand in this view: nothing moves it under the hand, now or after, until something is framed. */
  work(): void {
    this.#isAtWork = true;
  }

  /** Frames anew what has changed since; a view that the maker turned stays. */
  again(atOnce: boolean): void {
    const { held } = this;
    if (held !== null) this.frame(held, atOnce);
  }

  /** The picture has another size: what was framed is framed again, unless the maker turned to something else that is still in sight. */
  keep(): void {
    if (this.#last === null) return;
    if (this.held !== null) return this.again(true);
    const seen = isInSight(
      this.#boxesOf(this.#last.what),
      this.#studio.goal,
      this.#studio.widthPx / this.#studio.heightPx,
    );
    if (!seen) this.frame(this.#last.what, true);
  }

  /** To something, or to one of its sides; {@link back} leads back from there. */
  goTo(what: FrameTarget, side?: Pick<Orbit, 'yaw' | 'pitch'>): void {
    const { goal } = this.#studio;
    this.#before = { orbit: goal, risePx: this.#studio.riseGoalPx };
    const { yaw, pitch } = side ?? { yaw: goal.yaw, pitch: pitchFor(this.#boxesOf(what), goal.pitch) };
    this.#frame(what, false, yaw, pitch, side !== undefined);
  }

  /** To one side of what was framed last, so that it is all in the picture. */
  goToSide(side: Pick<Orbit, 'yaw' | 'pitch'>): void {
    const what = this.#last?.what ?? 'sculpt';
    // The sheets before it are seen from above, not from a side.
    this.goTo(what === 'setting' ? 'sculpt' : what, side);
  }

  /** Where the eye was before it was sent to something; once more leads there again. */
  back(): void {
    const to = this.#before;
    if (to === null) return;
    this.#before = { orbit: this.#studio.goal, risePx: this.#studio.riseGoalPx };
    this.#studio.travelTo(to.orbit, false, to.risePx, true);
  }

  /** From where it is seen now, or from another side. */
  frame(what: FrameTarget, atOnce: boolean, yaw = this.#studio.goal.yaw, pitch = this.#studio.goal.pitch): void {
    this.#frame(what, atOnce, yaw, pitch, false);
  }

  #frame(what: FrameTarget, atOnce: boolean, yaw: number, pitch: number, isAsked: boolean): void {
    const { widthPx, heightPx } = this.#studio;
    const { topPx, bottomPx } = this.#insets;
    const freePx = Math.max(LEAST_FREE * heightPx, heightPx - topPx - bottomPx);
    const margin = 1 - ((1 - MARGIN) * freePx) / heightPx;
    const orbit = framed(this.#boxesOf(what), yaw, pitch, widthPx / freePx, margin);
    this.#studio.travelTo(orbit, atOnce, (bottomPx - topPx) / 2, isAsked);
    this.#last = { what, orbit: this.#studio.goal };
    this.#isAtWork = false;
  }
}

/** From how high to look: what lies flat cannot be seen from its level, nor through the bench top. */
function pitchFor(boxes: readonly Box3[], pitch: number): number {
  const size = new Vector3();
  const isFlat = boxes.every((box) => box.getSize(size).y < FLAT_SHARE * Math.max(size.x, size.z));
  return isFlat ? Math.max(pitch, LEAST_PITCH_ON_FLAT) : pitch;
}
