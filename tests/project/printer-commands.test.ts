import { describe, expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import type { PrinterProfile } from '../../src/model/printer.ts';
import { newProject } from '../../src/project/new-project.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import type { Project } from '../../src/project/project.ts';
import {
  choosePrinter,
  forgetPrinter,
  keepPrinter,
  measurePrinter,
  printerOf,
} from '../../src/project/printer-commands.ts';
import { expectOk, expectProblem } from '../support/expect-ok.ts';
import { forAll } from '../support/for-all.ts';

const TRUE = { nominalMm: 100, acrossMm: 100, upMm: 100 };
const bare = {} as Project;

/** What a ruler reads on the square when a printer errs so, from the corners themselves. */
function readSquare({ acrossShare, upShare, leanRad }: Omit<PrinterProfile, 'name'>) {
  const corner = (x: number, y: number): readonly [number, number] => [
    acrossShare * x + upShare * Math.sin(leanRad) * y,
    upShare * Math.cos(leanRad) * y,
  ];
  const apart = (a: readonly [number, number], b: readonly [number, number]): number =>
    Math.hypot(a[0] - b[0], a[1] - b[1]);
  return {
    nominalMm: 100,
    acrossMm: apart(corner(0, 0), corner(100, 0)),
    upMm: apart(corner(0, 0), corner(0, 100)),
    diagonals: {
      risingMm: apart(corner(0, 0), corner(100, 100)),
      fallingMm: apart(corner(0, 100), corner(100, 0)),
    },
  };
}

const anyPrinter = (rand: () => number): PrinterProfile => ({
  name: 'any',
  acrossShare: 0.95 + 0.1 * rand(),
  upShare: 0.95 + 0.1 * rand(),
  leanRad: 0.02 * (rand() - 0.5),
});

describe('measurePrinter', () => {
  it('takes both directions from the sides', () => {
    const { profile, notes } = expectOk(measurePrinter(' hall ', { ...TRUE, acrossMm: 103.1, upMm: 98.8 }, null));
    expect(profile).toEqual({ name: 'hall', acrossShare: 1.031, upShare: 0.988, leanRad: 0 });
    expect(notes.map(({ code }) => code)).toEqual(['printer/large', 'printer/axes']);
    expect(expectOk(measurePrinter('hall', { ...TRUE, acrossMm: 99.5 }, null)).notes).toEqual([]);
    // Exactly at the limits.
    expect(expectOk(measurePrinter('hall', { ...TRUE, acrossMm: 97, upMm: 98 }, null)).notes).toEqual([]);
  });

  it('finds the lean from the diagonals', () =>
    forAll(anyPrinter, (printer) => {
      const { profile } = expectOk(measurePrinter('any', readSquare(printer), null));
      expect(profile.acrossShare).toBeCloseTo(printer.acrossShare, 12);
      expect(profile.upShare).toBeCloseTo(printer.upShare, 12);
      expect(profile.leanRad).toBeCloseTo(printer.leanRad, 12);
    }));

  it('measured again on a corrected page, is what it was: the page read true', () =>
    forAll(anyPrinter, (printer) => {
      const read = { ...TRUE, diagonals: { risingMm: Math.hypot(100, 100), fallingMm: Math.hypot(100, 100) } };
      const { profile } = expectOk(measurePrinter('any', read, printer));
      expect(profile.acrossShare).toBeCloseTo(printer.acrossShare, 12);
      expect(profile.upShare).toBeCloseTo(printer.upShare, 12);
      expect(profile.leanRad).toBeCloseTo(printer.leanRad, 12);
    }));

  it('adds what a corrected page was still off', () => {
    const old = { name: 'hall', acrossShare: 0.97, upShare: 0.98, leanRad: 0 };
    const { profile } = expectOk(measurePrinter('hall', { ...TRUE, acrossMm: 100.4, upMm: 99.7 }, old));
    expect(profile.acrossShare).toBeCloseTo(0.97 * 1.004, 12);
    expect(profile.upShare).toBeCloseTo(0.98 * 0.997, 12);
  });

  it('refuses what no printer does', () => {
    expectProblem(measurePrinter(' ', TRUE, null), 'printer/name');
    for (const bad of [0, -3, NaN, Infinity])
      expectProblem(measurePrinter('hall', { ...TRUE, upMm: bad }, null), 'printer/readings');
    expect(expectProblem(measurePrinter('hall', { ...TRUE, upMm: 88 }, null), 'printer/far').text).toContain('12.0 %');
    const slanted = readSquare({ acrossShare: 1, upShare: 1, leanRad: 0.06 });
    expect(expectProblem(measurePrinter('hall', slanted, null), 'printer/far').text).toContain('3.4°');
    const mixedUp = { ...TRUE, diagonals: { risingMm: 141.4, fallingMm: 145 } };
    expect(expectProblem(measurePrinter('hall', mixedUp, null), 'printer/readings').text).toContain('141.4 mm');
  });
});

describe('printers of a project', () => {
  it('are saved with it; one that is named but not held is refused', async () => {
    const bytes = new TextEncoder().encode('v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n');
    const source = { hash: await contentHash(bytes), fileName: 'helm.obj', format: 'obj' } as const;
    const project = keepPrinter({ name: 'hall', acrossShare: 0.98, upShare: 0.99, leanRad: 0.01 }).apply(
      newProject('helm', source),
    );
    const text = writeProjectFile(project, new Map([[source.hash, { fileName: 'helm.obj', bytes }]]));
    expect(expectOk(await readProjectFile(text, 'a.json')).project).toEqual(project);
    const lost = text.replace('"printer": "hall"', '"printer": "loft"');
    expect(expectProblem(await readProjectFile(lost, 'a.json'), 'project/broken').text).toContain('loft');
    const far = text.replace('0.98', '0.5');
    expectProblem(await readProjectFile(far, 'a.json'), 'project/broken');
  });

  const hall: PrinterProfile = { name: 'hall', acrossShare: 0.98, upShare: 0.99, leanRad: 0 };
  const loft: PrinterProfile = { ...hall, name: 'loft', upShare: 1 };
  const both = keepPrinter(loft).apply(keepPrinter(hall).apply(bare));

  it('are kept by name, the last one in force', () => {
    expect(both.printers).toEqual([hall, loft]);
    expect(printerOf(both)).toEqual(loft);
    const again = keepPrinter({ ...hall, upShare: 0.995 }).apply(both);
    expect(again.printers?.map(({ name }) => name)).toEqual(['loft', 'hall']);
    expect(printerOf(again)?.upShare).toBe(0.995);
  });

  it('are chosen and forgotten', () => {
    expect(printerOf(choosePrinter('hall').apply(both))).toEqual(hall);
    expect(choosePrinter('cellar').apply(both)).toBe(both);
    expect(printerOf(choosePrinter(null).apply(both))).toBeNull();
    expect(choosePrinter(null).apply(bare)).toBe(bare);
    expect(printerOf(forgetPrinter('hall').apply(both))).toEqual(loft);
    const none = forgetPrinter('hall').apply(forgetPrinter('loft').apply(both));
    expect('printers' in none || 'printer' in none).toBe(false);
    expect(forgetPrinter('cellar').apply(both)).toBe(both);
  });
});
