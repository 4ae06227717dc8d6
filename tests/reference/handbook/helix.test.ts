import { describe, expect, it } from 'vitest';
import { numbersOf } from './cases.ts';
import { apart, flatPointsOf, layFlat } from './flat-figures.ts';
import type { Pair } from '../report-shape.ts';
import { windingStrip } from './polygon-solids.ts';

/**
 * A strip wound round a rod: published lead angle, pitch and length against the strip that comes off a rod of flat sides. With
 * x = pi / sides a side is 2 r sin x, so a turn is n hypot(2 r sin x, pitch / n) long: short of hypot(C, pitch) by the share
 * (C / hypot(C, pitch))² x² / 6.
 */
const SIDES = 144;
const X = Math.PI / SIDES;
const DEG = 180 / Math.PI;

describe.each([
  ['G1', SIDES - 1],
  ['G2', 3 * SIDES],
])('wound strip %s over %i sides', (id, count) => {
  const { inputs, expected } = numbersOf(id);
  const { rod_diameter: diameter, strip_width: width } = inputs;
  const { pitch, turns, strip_length: length, lead_angle_deg: lead } = expected;
  // Of the strip, measured along the rod: its edges meet where this is the pitch.
  const rise = width / Math.cos(lead / DEG);
  const side = diameter * Math.sin(X);
  const made = layFlat(windingStrip(SIDES, count, diameter / 2, pitch, rise));

  it('is as long as the handbook says for its turns', async () => {
    const { pieces } = await made;
    expect(pieces).toHaveLength(1);
    let along = 0;
    const row = Array.from({ length: count + 1 }, (_, i): Pair => flatPointsOf(pieces[0], i)[0]);
    for (let i = 0; i < count; i += 1) along += apart(row[i], row[i + 1]);
    const own = count * Math.hypot(side, pitch / SIDES);
    expect(Math.abs(along / own - 1)).toBeLessThan(1e-6);
    const short = (Math.cos(lead / DEG) ** 2 * X * X) / 6;
    expect(Math.abs(along / ((length * count) / SIDES / turns) - (1 - short))).toBeLessThan(X ** 4 + 1e-7);
    // A helix rolls out to a straight line.
    expect(Math.abs(apart(row[0], row[count]) / own - 1)).toBeLessThan(1e-6);
  });

  it('is as wide and leans as the handbook says', async () => {
    const [piece] = (await made).pieces;
    const [start, next] = [0, 1].map((i) => flatPointsOf(piece, i)[0]);
    const above = flatPointsOf(piece, count + 1)[0];
    // Lead: from square to the rod, of which start-above is a line.
    const [ux, uy] = [next[0] - start[0], next[1] - start[1]];
    const [vx, vy] = [above[0] - start[0], above[1] - start[1]];
    const leads = Math.atan2(ux * vx + uy * vy, Math.abs(ux * vy - uy * vx)) * DEG;
    const own = Math.atan2(pitch / SIDES, side) * DEG;
    expect(Math.abs(leads - own)).toBeLessThan(1e-6);
    // tan lead = pitch / C; a shorter round leads by sin cos x² / 6 radians more.
    const more = (Math.sin(lead / DEG) * Math.cos(lead / DEG) * X * X * DEG) / 6;
    expect(Math.abs(leads - lead - more)).toBeLessThan(2e-6);
    const wide = Math.abs(ux * vy - uy * vx) / Math.hypot(ux, uy);
    expect(Math.abs(wide / (rise * Math.cos(own / DEG)) - 1)).toBeLessThan(1e-6);
    expect(Math.abs(wide / width - 1)).toBeLessThan(X * X);
    expect(piece.flipped).toBe(0);
    expect(piece.stretchPct.max).toBeLessThan(1e-6);
  });
});
