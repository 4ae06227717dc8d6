import { describe, expect, it } from 'vitest';
import { LiveLine } from '../../src/app/live-line.ts';

/** Leads the line to a corner by the way that is given from its anchor. */
function lead(line: LiveLine, to: number, way: (from: number) => number[]): void {
  line.pointAt(to);
  line.take(way(line.anchor));
}
const along = (to: number) => (from: number) => Array.from({ length: to - from + 1 }, (_, i) => from + i);

describe('a line that follows the pointer', () => {
  it('keeps what the last ways have in common, but for its end', () => {
    const line = new LiveLine(0);
    for (let to = 1; to <= 20; to += 1) lead(line, to, along(to));
    expect(line.corners).toEqual(along(20)(0));
    // The last four ways end at 17 to 20: they have the corners up to 17 in common, and three of these are left loose.
    expect(line.anchor).toBe(14);
  });

  it('stays where it was drawn when a shorter way comes up', () => {
    const line = new LiveLine(0);
    for (let to = 1; to <= 12; to += 1) lead(line, to, along(to));
    const { anchor } = line;
    lead(line, 99, (from) => [from, 98, 99]);
    expect(line.corners).toEqual([...along(anchor)(0), 98, 99]);
  });

  it('is taken up again by going back along it', () => {
    const line = new LiveLine(0);
    for (let to = 1; to <= 20; to += 1) lead(line, to, along(to));
    line.pointAt(6);
    expect([line.anchor, line.corners]).toEqual([6, along(6)(0)]);
    expect(line.trail).toEqual([]);
  });

  it('remembers where the pointer came by', () => {
    const line = new LiveLine(0);
    for (const to of [5, 7, 5]) line.pointAt(to);
    expect(line.trail).toEqual([7, 5]);
  });
});
