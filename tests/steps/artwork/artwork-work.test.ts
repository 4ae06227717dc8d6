import { describe, expect, it } from 'vitest';
import { chainGap, chainLength, chainSweep, segmentLength } from '../../../src/geom/outline.ts';
import { checkMesh } from '../../../src/mesh/check-mesh.ts';
import { enclosedVolume } from '../../support/enclosed-volume.ts';
import { artworkWork } from '../../../src/steps/artwork/artwork-work.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { artOf } from './art-of.ts';

const LINE = 'fill="none" stroke="black"';

describe('artwork as pieces', () => {
  it('keeps circles as arcs, holes, and other curves with their own length and area', () => {
    const art = artOf(
      `<g id="badge"><circle cx="50" cy="50" r="40" ${LINE}/><path ${LINE} d="M40 50C40 30 60 30 60 50z"/><ellipse cx="50" cy="65" rx="8" ry="4" ${LINE}/></g>`,
    );
    const { pieces, form } = expectOk(artworkWork(art, { thicknessMm: 2 }));
    const [{ outline, holes, areaMm2, key, bend, drawnAt }] = pieces;
    expect([pieces.length, key, bend.kind, drawnAt]).toEqual([1, 'badge', 'flat', 1]);
    expect(outline[0].segments).toMatchObject([{ kind: 'arc', radius: 40 }]);
    expect(outline[0].lengthMm).toBeCloseTo(80 * Math.PI, 10);
    expect(holes.length).toBe(2);
    const bump = holes.flat().find(({ segments }) => segments.length === 2);
    // Height 60 t (1 - t) over 120 t (1 - t) dt: 7200 B(3, 3).
    expect(Math.abs(chainSweep(bump?.segments ?? []))).toBeCloseTo(240, 9);
    const sum = [outline, ...holes].reduce((total, edges) => total + chainSweep(edges.flatMap((e) => e.segments)), 0);
    expect(sum).toBeCloseTo(areaMm2, 9);
    for (const { segments, lengthMm } of [outline, ...holes].flat()) {
      expect(chainGap(segments)).toBeLessThan(1e-9);
      expect(chainLength(segments)).toBeCloseTo(lengthMm, 12);
    }
    const ellipse = holes.flat().find(({ segments }) => segments.length === 1);
    // Perimeter of an ellipse 8 by 4: 4 a E(e²) with E(3/4) = 1.2110560275684594 (Abramowitz and Stegun, table 17.1).
    expect(segmentLength(ellipse?.segments[0] ?? outline[0].segments[0])).toBeCloseTo(32 * 1.2110560275684594, 8);
    if (form === null) throw new Error('no form');
    checkMesh(form);
    expect(Math.abs(enclosedVolume(form) / (2 * areaMm2) - 1)).toBeLessThan(0.002);
    expect(Math.max(...form.positions.filter((_, i) => i % 3 === 2))).toBe(2);
  });

  it('engraves open lines on what they lie on, and tells what runs off it', () => {
    const art = artOf(
      `<rect id="plate" x="10" y="10" width="40" height="40"/><path id="vein" ${LINE} d="M20 30H80"/><path id="far" ${LINE} d="M120 30H150"/>`,
    );
    const made = artworkWork(art, { thicknessMm: 2 });
    const [{ lines }] = expectOk(made).pieces;
    expect(lines.map(({ role, points }) => [role, [...points]])).toEqual([['engrave', [20, 170, 50, 170]]]);
    const told = made.ok ? made.notes.map(({ code, value }) => [code, value]) : [];
    expect(told).toEqual([
      ['artwork/engraved-outside', 30],
      ['artwork/engraved-outside', 30],
    ]);
  });

  it('leaves a hole without engraving, and engraves on both sides of it', () => {
    const art = artOf(
      `<g id="ring"><rect x="10" y="10" width="40" height="40" ${LINE}/><rect x="20" y="20" width="20" height="20" ${LINE}/><path ${LINE} d="M12 30H48"/></g>`,
    );
    const [{ lines }] = expectOk(artworkWork(art, { thicknessMm: 2 })).pieces;
    expect(lines.map(({ points }) => [...points])).toEqual([
      [12, 170, 20, 170],
      [40, 170, 48, 170],
    ]);
  });

  it('glues both faces and mirrors what is asked for', () => {
    const art = artOf('<path id="horn" d="M0 0h30l-10 40z"/>');
    const { pieces, steps } = expectOk(artworkWork(art, { thicknessMm: 6, quantity: 3, isMirroredToo: true }));
    expect(pieces.map(({ key, quantity }) => [key, quantity])).toEqual([
      ['horn', 3],
      ['horn-mirrored', 3],
    ]);
    expect(steps.map(({ glueMm2 }) => glueMm2)).toEqual([3600, 3600]);
    const [own, mirrored] = pieces.map(({ outline }) => chainSweep(outline.flatMap((e) => e.segments)));
    expect([own, mirrored]).toEqual([600, 600]);
    expect(pieces[1].outline[0].segments.map(({ from }) => 0 - from.x).sort((a, b) => a - b)).toEqual(
      pieces[0].outline[0].segments.map(({ from }) => from.x).sort((a, b) => a - b),
    );
  });

  it('makes a closed body of a plate with corners on straight sides', () => {
    const art = artOf('<path fill-rule="evenodd" d="M0 0H10H20H60V30V60H0V30zM10 10V20V30H20H30V10H20z"/>');
    const { form, pieces } = expectOk(artworkWork(art, { thicknessMm: 10 }));
    if (form === null) throw new Error('no form');
    checkMesh(form);
    expect(enclosedVolume(form)).toBeCloseTo(10 * pieces[0].areaMm2, 6);
  });

  it('needs an area', () =>
    void expectProblem(artworkWork(artOf(`<path ${LINE} d="M0 0H9"/>`), { thicknessMm: 2 }), 'artwork/no-area'));
});
