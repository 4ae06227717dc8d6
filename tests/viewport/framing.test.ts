import { Box3, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import type { FrameTarget } from '../../src/viewport/bench-contract.ts';
import { Framing } from '../../src/viewport/framing.ts';
import { isInSight, turned, type Orbit } from '../../src/viewport/orbit.ts';
import type { Studio } from '../../src/viewport/studio.ts';

const SCULPT = new Box3(new Vector3(-100, 0, -100), new Vector3(100, 300, 100));
const BEFORE = new Box3(new Vector3(-200, 0, 150), new Vector3(200, 0, 400));
const PIECE = new Box3(new Vector3(800, 0, 800), new Vector3(900, 6, 900));

/** A framing over a picture of 600 by 400 px that goes at once, and the view it leads to. */
function framing() {
  const studio = {
    widthPx: 600,
    heightPx: 400,
    riseGoalPx: 0,
    goal: { target: new Vector3(), yaw: 0.3, pitch: 0.4, distance: 900 } as Orbit,
    travelTo(to: Orbit, _atOnce: boolean, risePx = 0): void {
      [this.goal, this.riseGoalPx] = [to, risePx];
    },
  };
  const boxesOf = (what: FrameTarget): readonly Box3[] =>
    typeof what === 'object' ? [PIECE] : what === 'setting' ? [SCULPT, BEFORE] : [SCULPT];
  const isSeen = (box: Box3): boolean => isInSight([box], studio.goal, studio.widthPx / studio.heightPx);
  return { studio, isSeen, framing: new Framing(studio as unknown as Studio, boxesOf) };
}

describe('what is sent for', () => {
  it('comes into the picture, and the eye goes back to where it was, and there again', () => {
    const { studio, isSeen, framing: it } = framing();
    it.frame('sculpt', true);
    const begin = studio.goal;
    it.goTo({ piece: 0 });
    const near = studio.goal;
    expect([isSeen(PIECE), isSeen(SCULPT)]).toEqual([true, false]);
    it.back();
    expect(studio.goal).toBe(begin);
    it.back();
    expect(studio.goal).toBe(near);
  });

  it('is seen from each side all in the picture, however far the view had strayed', () => {
    const { studio, isSeen, framing: it } = framing();
    it.frame('sculpt', true);
    studio.goal = { ...studio.goal, target: new Vector3(5000, 0, 0) };
    it.goToSide({ yaw: Math.PI, pitch: 0.12 });
    expect(isSeen(SCULPT)).toBe(true);
    expect([studio.goal.yaw, studio.goal.pitch]).toEqual([Math.PI, 0.12]);
  });

  it('is from a side the sculpt alone, where it was seen in its setting', () => {
    const { studio, framing: it } = framing();
    it.frame('sculpt', true, 0, 0.12);
    const alone = studio.goal;
    it.frame('setting', true);
    it.goToSide({ yaw: 0, pitch: 0.12 });
    expect(studio.goal).toEqual(alone);
  });
});

describe('a picture of another size', () => {
  it('is framed anew as it was, or when what matters left it; else it stays', () => {
    const { studio, isSeen, framing: it } = framing();
    it.frame('sculpt', true);
    const { distance } = studio.goal;
    studio.widthPx = 150;
    it.keep();
    expect(studio.goal.distance).toBeGreaterThan(1.5 * distance);
    studio.goal = turned(studio.goal, 0.5, 0);
    const own = studio.goal;
    it.keep();
    expect(studio.goal).toBe(own);
    studio.goal = { ...own, target: new Vector3(5000, 0, 0) };
    expect(isSeen(SCULPT)).toBe(false);
    it.keep();
    expect(isSeen(SCULPT)).toBe(true);
  });
});

describe('a view in which the maker has something in hand', () => {
  it('moves for no panel, no new size and no change of what it shows, until something is framed', () => {
    const { studio, framing: it } = framing();
    it.frame('sculpt', true);
    it.work();
    const own = studio.goal;
    it.setInsets({ topPx: 120, bottomPx: 40 });
    it.again(true);
    studio.widthPx = 590;
    it.keep();
    expect([studio.goal, it.held]).toEqual([own, null]);
    expect(studio.goal).toBe(own);

    it.frame('sculpt', true);
    const framed = studio.goal;
    it.setInsets({ topPx: 0, bottomPx: 0 });
    expect(it.held).toBe('sculpt');
    expect(studio.goal.distance).toBeLessThan(framed.distance);
  });
});
