import { expect, it } from 'vitest';
import { edgePull } from '../../src/app/edge-scroll.ts';

it('pulls along near the edges alone, up or down, the faster the nearer, and no faster beyond', () => {
  expect([300, 100, 500].map((y) => edgePull(y, 0, 600))).toEqual([0, 0, 0]);
  const down = [560, 590, 600, 900].map((y) => edgePull(y, 0, 600));
  expect(down[0]).toBeGreaterThan(0);
  expect(down[1]).toBeGreaterThan(down[0]);
  expect(down[2]).toBe(down[3]);
  expect(edgePull(-20, 0, 600)).toBe(-down[3]);
  // In a low window the middle stays still.
  expect(edgePull(50, 0, 100)).toBe(0);
});
