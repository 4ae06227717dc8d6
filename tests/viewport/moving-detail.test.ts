import { expect, it } from 'vitest';
import { MovingDetail } from '../../src/viewport/moving-detail.ts';

const SLOW = 60;
const QUICK = 12;

it('leaves a picture that comes quickly as fine as it is, one that waits now and then too', () => {
  const detail = new MovingDetail();
  for (const wait of [QUICK, SLOW, QUICK, QUICK, SLOW, QUICK]) detail.drawn(wait);
  expect(detail.share).toBe(1);
});

it('makes slow pictures coarser by steps, to a third and no further', () => {
  const detail = new MovingDetail();
  const shares = Array.from({ length: 12 }, () => {
    detail.drawn(SLOW);
    return detail.share;
  });
  expect(shares[0]).toBe(1);
  expect(shares[1]).toBeCloseTo(0.7);
  expect(shares[3]).toBeCloseTo(0.49);
  expect(shares.at(-1)).toBe(0.34);
});

it('tries a finer picture after each rest', () => {
  const detail = new MovingDetail();
  for (let i = 0; i < 4; i += 1) detail.drawn(SLOW);
  detail.rested();
  expect(detail.share).toBeCloseTo(0.7);
  detail.rested();
  detail.rested();
  expect(detail.share).toBe(1);
});
