import { Quaternion, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { apartArrow, benchFromDrawing, whereabouts, type Journey } from '../../src/viewport/journey.ts';

const journey: Journey = {
  sculptCentre: new Vector3(50, 200, 30),
  sculptTurn: new Quaternion().setFromAxisAngle(new Vector3(0, 1, 0), 0.7),
  apart: new Vector3(40, 0, 0),
  glued: { place: 1, of: 2 },
  benchCentre: new Vector3(-100, 4, 400),
  benchTurn: new Quaternion().setFromAxisAngle(new Vector3(1, 0, 0), -Math.PI / 2),
  lift: 60,
  turnTaken: 1,
};

describe('the journey of a piece', () => {
  it('begins in its place on the sculpt', () => {
    const { roll, centre, turn } = whereabouts(journey, 0);
    expect(roll).toBe(0);
    expect(centre.distanceTo(journey.sculptCentre)).toBe(0);
    expect(turn.angleTo(journey.sculptTurn)).toBeCloseTo(0, 6);
  });

  it('comes off without bending', () => {
    const { roll, centre } = whereabouts(journey, 1);
    expect(roll).toBe(0);
    expect(centre.toArray()).toEqual([90, 200, 30]);
  });

  it('is flat above its place, then down', () => {
    const above = whereabouts(journey, 2);
    expect(above.roll).toBe(1);
    expect(above.centre.x).toBeCloseTo(-100, 9);
    expect(above.centre.y).toBeCloseTo(64, 9);
    expect(above.turn.angleTo(journey.benchTurn)).toBeCloseTo(0, 6);
    expect(whereabouts(journey, 3).centre.distanceTo(journey.benchCentre)).toBeLessThan(1e-9);
  });

  it('has no jumps', () => {
    let before = whereabouts(journey, 0);
    for (let i = 1; i <= 3000; i += 1) {
      const at = whereabouts(journey, i / 1000);
      expect(at.centre.distanceTo(before.centre)).toBeLessThan(2);
      expect(Math.abs(at.roll - before.roll)).toBeLessThan(0.01);
      before = at;
    }
  });

  it('comes off before what was glued earlier', () => {
    const at = (place: number): number =>
      whereabouts({ ...journey, glued: { place, of: 6 } }, 0.3).centre.distanceTo(journey.sculptCentre);
    expect([5, 4, 3, 2, 1, 0].map(at)).toEqual([5, 4, 3, 2, 1, 0].map(at).toSorted((a, b) => b - a));
    expect(at(5)).toBeGreaterThan(30);
    expect(at(0)).toBe(0);
  });

  it('sets off in turn', () => {
    expect(whereabouts({ ...journey, turnTaken: 0 }, 1.2).roll).toBeGreaterThan(0);
    expect(whereabouts(journey, 1.2).roll).toBe(0);
  });
});

describe('the way off the sculpt', () => {
  const middle = new Vector3(0, 100, 0);

  it('follows the outward normal', () => {
    expect(apartArrow(new Vector3(0.9, 0, 0), new Vector3(50, 100, 0), middle, 30).toArray()).toEqual([30, 0, 0]);
  });

  it('never goes into the bench', () => {
    const down = apartArrow(new Vector3(0, -1, 0), new Vector3(0, 0, 0), middle, 30);
    expect(down.y).toBeGreaterThanOrEqual(0);
    expect(down.length()).toBeCloseTo(30, 9);
  });

  it('leads away from the middle where a piece wraps all round', () => {
    expect(apartArrow(new Vector3(0.01, 0, 0), new Vector3(0, 180, 0), middle, 30).toArray()).toEqual([0, 30, 0]);
  });
});

it('lays a drawing with its top away from the viewer', () => {
  const move = benchFromDrawing(10, 5, 100);
  expect(new Vector3(3, 20, 2).applyMatrix4(move).distanceTo(new Vector3(13, 7, 80))).toBeLessThan(1e-9);
});
