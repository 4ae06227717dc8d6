import { foamId } from '../../src/base/ids.ts';
import { describe, expect, it } from 'vitest';
import { PartsDesk, sizeNamed } from '../../src/worker/parts-desk.ts';
import { WRAP } from '../../src/steps/shapes/wrap.ts';

const kept = new Map<string, unknown>();
const desk = new PartsDesk((hash, source) => kept.set(hash, source));
const foam = { thicknessMm: 6, neutralFraction: 0.5 };

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

it('makes parts of files by what they are, keeps the files, and refuses what is neither', async () => {
  const drawn = await desk.partFromFile(
    bytesOf('<svg xmlns="http://www.w3.org/2000/svg"/>'),
    'sun_badge.svg',
    foamId('eva-6'),
  );
  expect(drawn).toMatchObject({ ok: true, value: { kind: 'artwork', name: 'sun badge', drawing: { from: 'svg' } } });
  const solid = await desk.partFromFile(bytesOf('v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n'), 'egg.obj', foamId('eva-6'));
  expect(solid).toMatchObject({ ok: true, value: { kind: 'stack', wish: { axis: { y: 1 } } } });
  expect(kept.size).toBe(2);
  expect(await desk.partFromFile(bytesOf('hello'), 'note.txt', foamId('eva-6'))).toMatchObject({ ok: false });
});

describe('shapes before they are parts', () => {
  it('offers shapes that have pieces, and no tables of figures', async () => {
    const names = (await desk.shapes()).map(({ name }) => name);
    expect(names).toContain('square_to_round');
    expect(names).not.toContain('page_units');
  });

  it('gives the flat piece as long as the sheet is where it keeps its length, and the box of the finished foam', async () => {
    const { pieces, told, box } = await desk.tryShape({ shape: 'wrap', sizes: { diameter: '114,3 mm' }, foam });
    expect(told.filter(({ severity }) => severity === 'error')).toEqual([]);
    const xs = [...pieces[0].rings[0]].filter((_, i) => i % 2 === 0);
    // Bend allowance of sheet-metal handbooks over a whole turn: pi (D + 2 k t).
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(Math.PI * (114.3 + 6), 6);
    // Facets of a round form stand a little inside it.
    expect((box?.max.x ?? 0) - (box?.min.x ?? 0)).toBeCloseTo(114.3 + 12, 0);
  });

  it('tells every size that cannot be read, each beside its own field, in spoken words', async () => {
    const ask = { shape: 'cone_from_disc', sizes: { disc_radius: 'wide', wedge_deg: 'x' }, foam };
    const { pieces, told } = await desk.tryShape(ask);
    expect(pieces).toEqual([]);
    expect(told.map(({ size }) => size)).toEqual(['disc_radius', 'wedge_deg']);
    expect(told[0].text).toMatch(/^disc radius is a length/);
  });

  it('tells sizes that do not go together, and an unknown shape', async () => {
    const thick = await desk.tryShape({ shape: 'wrap', sizes: { diameter: '5 mm', surface: 'outside' }, foam });
    expect(thick).toMatchObject({ pieces: [], told: [{ severity: 'error', size: 'diameter' }] });
    const unknown = await desk.tryShape({ shape: 'blob', sizes: {}, foam });
    expect(unknown).toMatchObject({ pieces: [], told: [{ severity: 'error', size: null }] });
  });

  it('finds the size a sentence names first, by whole words', () => {
    expect(sizeNamed('The lengthy thickness must be less than the diameter.', WRAP.sizes)).toBe('thickness');
    expect(sizeNamed('Nothing of the kind.', WRAP.sizes)).toBeNull();
  });
});
