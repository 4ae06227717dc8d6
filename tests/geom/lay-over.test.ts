import { describe, expect, it } from 'vitest';
import { layPoint, layPoints, layRing, layWords } from '../../src/geom/lay-over.ts';
import { ringArea } from '../../src/geom/ring.ts';

const OVER = { x: 100, y: 50, turnRad: Math.PI / 2, isFlipped: true };

describe('a drawing laid turned over', () => {
  it('has x turned round first, then is turned, then moved', () => {
    // (30, 10) -> (-30, 10) -> a quarter to the left: (-10, -30) -> (90, 20)
    expect(layPoint({ x: 30, y: 10 }, OVER)).toEqual({ x: 90, y: 20 });
    expect([...layPoints([30, 10, 0, 0], OVER)]).toEqual([90, 20, 100, 50]);
    expect(layPoint({ x: 30, y: 10 }, { x: 100, y: 50, turnRad: Math.PI / 2 })).toEqual({ x: 90, y: 80 });
  });

  it('keeps the way round of its rings', () => {
    const ring = [0, 0, 30, 0, 0, 20];
    expect(ringArea(layRing(ring, OVER))).toBeCloseTo(300, 9);
    expect(ringArea(layPoints(ring, OVER))).toBeCloseTo(-300, 9);
  });

  it('has words that are read as ever, in the room they had', () => {
    // Words of 40 mm that begin at (10, 5) and rise by 30 degrees.
    const words = { text: 'up', at: { x: 10, y: 5 }, angleRad: Math.PI / 6, align: 'left' } as const;
    const laid = layWords(words, OVER);
    const endOf = ({ at, angleRad, align }: { at: { x: number; y: number }; angleRad: number; align: string }) => {
      const way = align === 'left' ? 40 : -40;
      return { x: at.x + way * Math.cos(angleRad), y: at.y + way * Math.sin(angleRad) };
    };
    // Where the last letter was is where the first one is now.
    const far = layPoint(endOf(words), OVER);
    expect(laid.align).toBe('right');
    expect(endOf(laid).x).toBeCloseTo(far.x, 9);
    expect(endOf(laid).y).toBeCloseTo(far.y, 9);
    expect(laid.at).toEqual(layPoint(words.at, OVER));
    // What stood above the words does so still: a letter's top, square to them.
    const top = (angle: number) => ({ x: -Math.sin(angle), y: Math.cos(angle) });
    const [up, was] = [top(laid.angleRad), top(words.angleRad)];
    const turned = layPoint({ x: words.at.x + was.x, y: words.at.y + was.y }, OVER);
    expect(laid.at.x + up.x).toBeCloseTo(turned.x, 9);
    expect(laid.at.y + up.y).toBeCloseTo(turned.y, 9);
    expect(layWords(words, { x: 0, y: 0, turnRad: 1 })).toMatchObject({ angleRad: Math.PI / 6 + 1, align: 'left' });
  });
});
