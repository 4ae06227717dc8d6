import { expect, it } from 'vitest';
import { densityPct } from '../../src/worker/found-layout.ts';
import { startSheetSearch } from '../../src/worker/sheet-search.ts';
import type { FoundLayout, FromSheetSearch } from '../../src/worker/sheet-search-api.ts';
import type { FoamId } from '../../src/base/ids.ts';
import type { Sheet } from '../../src/model/sheet.ts';

const found = (lastMm: number, bought = 1): FoundLayout => ({
  sheets: [],
  kept: [{ foam: 'eva-6' as FoamId, sheet: { stock: 'buy', nth: lastMm }, places: [] }],
  figures: { unlaid: 0, bought, sheets: bought, lastMm, densityPct: 50 },
});

/** A search of two threads that a test speaks for. */
function search() {
  const hears: ((message: FromSheetSearch) => void)[] = [];
  const breaks: (() => void)[] = [];
  const posted: { readonly thread: number; readonly message: unknown }[] = [];
  const ended: number[] = [];
  const told: (number | string)[] = [];
  const run = startSheetSearch(
    { project: { foams: [] }, pieces: [], beside: [], templates: [] },
    {
      found: ({ figures }) => told.push(figures.lastMm),
      looked: (moves) => told.push(`${moves} moves`),
      ended: (isBroken) => told.push(isBroken ? 'broken' : 'ended'),
    },
    (heard, failed) => {
      breaks.push(failed);
      const thread = hears.push(heard) - 1;
      return { post: (message) => posted.push({ thread, message }), end: () => ended.push(thread) };
    },
    2,
  );
  return { run, hears, breaks, posted, ended, told };
}

it('tells only what is better, whichever thread found it, and lets the others go on from there', () => {
  const { run, hears, posted, ended, told } = search();
  expect(posted.map(({ message }) => (message as { kind: string }).kind)).toEqual(['begin', 'begin']);
  const seeds = posted.map(({ message }) => (message as { seed: number }).seed);
  expect(new Set(seeds).size).toBe(2);

  hears[0]({ kind: 'found', layout: found(300), moves: 0 });
  hears[1]({ kind: 'found', layout: found(300), moves: 2 });
  hears[1]({ kind: 'found', layout: found(280), moves: 10 });
  hears[0]({ kind: 'found', layout: found(290), moves: 5 });
  // A second sheet is never better, however short it is.
  hears[0]({ kind: 'found', layout: found(10, 2), moves: 6 });
  expect(told.filter((one) => typeof one === 'number')).toEqual([300, 280]);
  expect(told.at(-1)).toBe('16 moves');
  expect(posted.at(-1)).toMatchObject({ thread: 0, message: { kind: 'offer', kept: [{ sheet: { nth: 280 } }] } });

  hears[0]({ kind: 'ended' });
  expect(told.at(-1)).not.toBe('ended');
  run.end();
  expect(ended).toEqual([0, 1]);
  hears[1]({ kind: 'found', layout: found(1), moves: 11 });
  expect(told).not.toContain(1);
});

it('says when no thread goes on', () => {
  const { hears, told } = search();
  for (const hear of hears) hear({ kind: 'ended' });
  expect(told).toEqual(['ended']);
});

it('tells a search that broke off from one that found nothing', () => {
  const whole = search();
  whole.breaks[0]();
  whole.breaks[0]();
  expect(whole.told).toEqual([]);
  whole.breaks[1]();
  expect(whole.told).toEqual(['broken']);
  const half = search();
  half.breaks[0]();
  half.hears[1]({ kind: 'ended' });
  expect(half.told).toEqual(['ended']);
});

it('reckons how much foam is used by what lies before the end of the last piece', () => {
  const sheet = (usedShare: number, filledMm: number, foam = 'eva-6'): Sheet => ({
    foam: foam as FoamId,
    name: { stock: 'buy', nth: 0 },
    thicknessMm: 6,
    widthMm: 1000,
    heightMm: 2000,
    placements: [],
    usedShare,
    fillAlong: 'y',
    filledMm,
  });
  // Of the first all 2 m² count, of the last of each foam a half and a quarter: 1.6 + 0.6 + 0.3 of 2 + 1 + 0.5 m².
  const sheets = [sheet(0.8, 1900), sheet(0.3, 1000), sheet(0.15, 500, 'eva-2')];
  expect(densityPct(sheets)).toBeCloseTo((100 * 2.5) / 3.5, 9);
});
