import { describe, expect, it } from 'vitest';
import type { Artwork } from '../../../src/model/artwork.ts';
import type { ArtworkChoice } from '../../../src/model/artwork-choice.ts';
import { artworkFromSvg, USUAL_ARTWORK } from '../../../src/pipeline/artwork.ts';
import { ringArea, ringLength } from '../../../src/geom/ring.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';

const LINE = 'fill="none" stroke="black"';
const svg = (inner: string, head = 'width="100mm" height="100mm" viewBox="0 0 100 100"'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${head}>${inner}</svg>`;
const read = (text: string, choice: Partial<ArtworkChoice> = {}) =>
  artworkFromSvg(text, { ...USUAL_ARTWORK, ...choice });
const made = (text: string, choice: Partial<ArtworkChoice> = {}): Artwork => expectOk(read(text, choice));

function codes(text: string, choice: Partial<ArtworkChoice> = {}): string[] {
  const result = read(text, choice);
  return result.ok ? result.notes.map(({ code }) => code) : [`problem ${result.problem.code}`];
}

describe('shapes', () => {
  it.each([
    ['<rect width="40" height="20"/>', 800, 120],
    ['<rect width="40" height="20" rx="5"/>', 800 - 25 * (4 - Math.PI), 80 + 10 * Math.PI],
    ['<rect width="40" height="20" rx="30" ry="10"/>', 800 - 200 * (4 - Math.PI), null],
    ['<circle cx="50" cy="50" r="10%"/>', 100 * Math.PI, 20 * Math.PI],
    ['<ellipse cx="50" cy="50" rx="20" ry="10"/>', 200 * Math.PI, 96.8844822054767],
    ['<polygon points="0,0 30,0 0,40"/>', 600, 120],
    ['<path d="M0 0Q30 60 60 0z"/>', 1200, null],
    ['<path d="M30 20h-15a15 15 0 1 0 15-15z"/>', 168.75 * Math.PI, 30 + 22.5 * Math.PI],
    ['<circle r="1cm" cx="40" cy="40"/>', ((10 * 96) / 25.4) ** 2 * Math.PI, null],
  ])('%s has its true area and length', (inner, area, length) => {
    const [piece] = made(svg(inner)).pieces;
    expect(piece.areaMm2).toBeCloseTo(area, 6);
    if (length !== null) expect(piece.lengthMm).toBeCloseTo(length, 8);
  });

  it.each([
    ['translate(10 20) rotate(30) scale(2 3) skewX(20)', 6],
    ['matrix(0 1 -1 0 50 0) scale(-1 2)', 2],
    ['rotate(45 50 50) skewY(10)', 1],
  ])('%s maps an ellipse exactly', (transform, scale) => {
    const text = svg(`<g transform="${transform}"><ellipse rx="3" ry="2"/></g>`);
    const [{ regions }] = made(text, { deviationMm: 0.001 }).pieces;
    expect(regions[0].areaMm2).toBeCloseTo(6 * Math.PI * scale, 9);
    const { ring, lengthMm } = regions[0].outline;
    expect(ringArea(ring)).toBeGreaterThan(6 * Math.PI * scale - 0.001 * lengthMm);
    expect(lengthMm - ringLength(ring)).toBeGreaterThan(0);
    expect(lengthMm - ringLength(ring)).toBeLessThan(0.01);
  });

  it.each([
    ['width="96" height="96"', 25.4],
    ['width="1in" height="1in"', 25.4],
    ['width="72pt" height="72pt"', 25.4],
    ['width="6pc" height="6pc"', 25.4],
    ['width="2.54cm" height="2.54cm"', 25.4],
    ['width="10mm" height="10mm" viewBox="0 0 96 96"', 10],
    ['width="10mm" height="20mm" viewBox="0 0 96 96"', 10],
    ['width="10mm" height="20mm" viewBox="0 0 96 96" preserveAspectRatio="xMinYMin slice"', 20],
    ['width="10mm" viewBox="0 0 96 48"', 10],
  ])('%s gives a square of 96 its width', (head, width) => {
    expect(made(svg('<rect width="96" height="96"/>', head)).widthMm).toBeCloseTo(width, 9);
  });

  it('goes through nested frames and symbols with their place', () => {
    const text = svg(
      `<svg x="10" y="10" width="40" height="20" viewBox="0 0 10 10" preserveAspectRatio="xMaxYMid"><rect width="10" height="10"/></svg>
       <symbol id="s" viewBox="0 0 2 2"><circle cx="1" cy="1" r="1"/></symbol><use xlink:href="#s" x="60" y="60" width="20" height="20"/>`,
    );
    const [square, round] = made(text).pieces.map(({ regions }) => regions[0].outline.ring);
    // x from 30 to 50, y from 90 down to 70.
    expect(Math.min(...square.filter((_, i) => i % 2 === 0))).toBeCloseTo(30, 9);
    expect(Math.max(...square.filter((_, i) => i % 2 === 1))).toBeCloseTo(90, 9);
    // As far right as the frame of 20 from 60 goes, half-way up it.
    const right = Math.max(...round.filter((_, i) => i % 2 === 0));
    expect(right).toBeCloseTo(80, 9);
    expect(round[round.indexOf(right) + 1]).toBeCloseTo(30, 9);
  });
});

describe('pieces', () => {
  it('are groups by title, label or id, and shapes outside of them', () => {
    const text = svg(
      `<g id="layer"><g id="badge"><title>Sun &amp; star</title><rect width="9" height="9"/><g><rect x="20" width="9" height="9"/></g></g>
       <g x:label="rim" xmlns:x="urn:x"><rect x="40" width="9" height="9"/></g></g><rect id="strap" x="60" width="9" height="9"/>`,
    );
    expect(made(text).pieces.map(({ name, regions }) => [name, regions.length])).toEqual([
      ['Sun & star', 2],
      ['rim', 1],
      ['strap', 1],
    ]);
  });

  it('nest loose lines, an island in a hole being a piece again', () => {
    const rings = [40, 30, 20].map((r) => `<circle id="r${r}" cx="50" cy="50" r="${r}" ${LINE}/>`).join('');
    const { pieces } = made(svg(rings));
    expect(pieces.map(({ name }) => name)).toEqual(['r40', 'r20']);
    expect(pieces[0].areaMm2).toBeCloseTo(700 * Math.PI, 9);
    expect(pieces[0].regions[0].holes[0].path?.segments[0].kind).toBe('arc');
    expect(ringArea(pieces[0].regions[0].holes[0].ring)).toBeLessThan(0);
  });

  it.each([
    ['nonzero', 'M0 0h30v30h-30zM10 10h10v10h-10z', 900],
    ['nonzero', 'M0 0h30v30h-30zM10 10v10h10v-10z', 800],
    ['evenodd', 'M0 0h30v30h-30zM10 10h10v10h-10z', 800],
    ['evenodd', 'M0 0h20v20h-20zM10 10h20v20h-20z', 600],
    ['nonzero', 'M0 0h20v20h-20zM10 10h20v20h-20z', 700],
  ])('follow the fill rule %s of %s', (rule, d, area) => {
    expect(made(svg(`<path fill-rule="${rule}" d="${d}"/>`)).pieces[0].areaMm2).toBeCloseTo(area, 6);
  });

  it('read strokes as what they cover on request', () => {
    const text = svg('<path d="M10 10H50" fill="none" style="stroke:red;stroke-width:4"/>');
    expect(made(text).pieces[0]).toMatchObject({ areaMm2: 0, lengthMm: 40 });
    const [{ areaMm2, lines }] = made(text, { strokes: 'outline' }).pieces;
    expect(areaMm2).toBeCloseTo(160, 6);
    expect(lines).toEqual([]);
  });
});

describe('size', () => {
  const text = svg('<rect id="a" width="10" height="10"/><rect id="b" x="30" y="40" width="10" height="10"/>');
  it.each([
    [{ by: 'width', mm: 80 } as const, 2],
    [{ by: 'names', a: 'a', b: 'b', mm: 150 } as const, 3],
    [{ by: 'points', a: { x: 0, y: 0 }, b: { x: 3, y: 4 }, mm: 2.5 } as const, 0.5],
  ])('by %j', (size, scale) => {
    const artwork = made(text, { size });
    expect(artwork.scale).toBeCloseTo(scale, 12);
    expect(artwork.pieces[0].areaMm2).toBeCloseTo(100 * scale * scale, 9);
  });

  it('by a name that is not there ends in a problem', () =>
    void expectProblem(read(text, { size: { by: 'names', a: 'a', b: 'c', mm: 1 } }), 'artwork/known'));
});

describe('what is wrong', () => {
  it('open lines are told with their gap and closed only on request', () => {
    const text = svg(`<path id="gap" ${LINE} d="M10 10h30v30h-30v-29.7"/>`);
    const result = read(text);
    if (!result.ok) throw new Error(result.problem.text);
    expect(result.notes).toMatchObject([{ code: 'artwork/open', value: expect.closeTo(0.3, 9) as number }]);
    expect(result.notes[0].text).toContain('at x 10.0, y 89.7 mm');
    expect(result.value.pieces[0].areaMm2).toBe(0);
    expect(codes(text, { closeMm: 0.2 })).toEqual(['artwork/open']);
    expect(codes(text, { closeMm: 0.4 })).toEqual(['artwork/joined']);
    expect(made(text, { closeMm: 0.4 }).pieces[0].areaMm2).toBeCloseTo(900, 9);
  });

  it('lines drawn one by one become an outline where their ends meet', () => {
    const sides = ['M0 0H30', 'M30 30V0', 'M0 0V30', 'M30 30H0'].map((d) => `<path ${LINE} d="${d}"/>`).join('');
    const { pieces } = made(svg(`<g id="box">${sides}</g>`));
    expect(pieces).toMatchObject([{ name: 'box', areaMm2: 900, lengthMm: 120, lines: [] }]);
  });

  it.each([
    ['<path fill="none" d="M10 10L30 30V10L10 30z"/>', 'artwork/crossing', { x: 20, y: 80 }],
    [`<g><circle cx="20" cy="20" r="9" ${LINE}/><circle cx="20" cy="20" r="9" ${LINE}/></g>`, 'artwork/doubled', null],
    [`<g><path ${LINE} d="M0 0h20v20h-20z"/><path ${LINE} d="M20 5h20v10h-20z"/></g>`, 'artwork/doubled', null],
    ['<path fill="none" d="M10 10H60H20"/>', 'artwork/doubled', null],
    ['<path d="M10 10h20v20"/>', 'artwork/open-fill', null],
    ['<g><rect width="20" height="20"/><rect x="5" y="5" width="9" height="9"/></g>', 'artwork/lost-in-fill', null],
    ['<g><rect width="20" height="20"/><rect x="15" y="5" width="9" height="9"/></g>', 'artwork/united-fills', null],
    ['<rect width="9" height="9"/><g display="none"><rect width="5" height="5"/></g>', 'artwork/hidden', null],
    ['<rect width="9" height="9"/><rect style="visibility:hidden" width="5" height="5"/>', 'artwork/hidden', null],
    ['<rect width="9" height="9"/><text>writing</text>', 'artwork/text', null],
    ['<rect width="9" height="9"/><image width="5" height="5"/>', 'artwork/image', null],
    ['<rect width="9" height="9" fill="url(#g)"/>', 'artwork/gradient', null],
    ['<rect width="9" height="9" clip-path="url(#c)"/>', 'artwork/clip', null],
    ['<rect width="9" height="9"/><use href="other.svg#a"/>', 'artwork/copy', null],
    ['<rect width="9" height="9"/><rect width="5em" height="9"/>', 'artwork/length', null],
  ])('%s: %s', (inner, code, place) => {
    const result = read(svg(inner));
    if (!result.ok) throw new Error(result.problem.text);
    const found = result.notes.find((one) => one.code === code);
    expect(result.notes.map((one) => one.code)).toContain(code);
    if (place !== null) {
      expect(found?.where.point?.[0]).toBeCloseTo(place.x, 6);
      expect(found?.where.point?.[1]).toBeCloseTo(place.y, 6);
    }
  });

  it('a line drawn twice is cut once; shapes that touch are no fault', () => {
    const twice = `<g>${`<circle cx="20" cy="20" r="9" ${LINE}/>`.repeat(2)}</g>`;
    expect(made(svg(twice)).pieces[0].areaMm2).toBeCloseTo(81 * Math.PI, 9);
    expect(codes(svg(`<g><circle cx="20" cy="20" r="9" ${LINE}/><circle cx="38" cy="20" r="9" ${LINE}/></g>`))).toEqual(
      [],
    );
  });
});

describe('made regular on request', () => {
  // Four cubics with the usual handle stray from a circle of radius 40 by 0.0109 mm outward.
  const k = 40 * 0.5522847498;
  const round = `M90 50C90 ${50 + k} ${50 + k} 90 50 90S10 ${50 + k} 10 50 ${50 - k} 10 50 10 90 ${50 - k} 90 50Z`;

  it('a circle of four curves becomes one, its deviation told', () => {
    const text = svg(`<path ${LINE} d="${round}"/>`);
    expect(made(text).pieces[0].regions[0].outline.path?.segments.length).toBe(4);
    const result = read(text, { regulariseMm: 0.02 });
    if (!result.ok) throw new Error(result.problem.text);
    const path = result.value.pieces[0].regions[0].outline.path;
    expect(path?.segments).toMatchObject([{ kind: 'arc' }]);
    expect(result.value.pieces[0].areaMm2).toBeCloseTo(40.0055 ** 2 * Math.PI, 0);
    expect(result.notes).toMatchObject([{ code: 'artwork/regular', value: expect.closeTo(0.0055, 3) as number }]);
    expect(codes(text, { regulariseMm: 0.001 })).toEqual([]);
  });

  it('a half circle and a nearly straight curve become an arc and a line', () => {
    const text = svg(
      `<path ${LINE} d="M90 50C90 ${50 + k} ${50 + k} 90 50 90S10 ${50 + k} 10 50C30 50.01 60 49.99 90 50Z"/>`,
    );
    const path = made(text, { regulariseMm: 0.05 }).pieces[0].regions[0].outline.path;
    expect(path?.segments.map(({ kind }) => kind).sort()).toEqual(['arc', 'line']);
  });

  it('squares, hexagons and stars stay', () => {
    for (const points of [
      '0,0 20,0 20,20 0,20',
      '10,0 30,0 40,17 30,34 10,34 0,17',
      '0,0 50,5 90,0 85,40 90,90 40,85 0,90 5,50',
    ])
      expect(codes(svg(`<polygon points="${points}"/>`), { regulariseMm: 0.2 })).toEqual([]);
  });
});

describe('hostile files end in problems', () => {
  const bomb = Array.from(
    { length: 20 },
    (_, i) => `<g id="b${i + 1}"><use href="#b${i}"/><use href="#b${i}"/></g>`,
  ).join('');
  const tangle = `M0 0${Array.from({ length: 2000 }, (_, i) => `L${(i * 7919) % 100} ${(i * 104729) % 97}`).join('')}`;
  it.each([
    ['', 'artwork/empty'],
    ['<html/>', 'artwork/not-svg'],
    ['<svg', 'xml/unreadable'],
    ['<!DOCTYPE svg [<!ENTITY a "b">]><svg/>', 'xml/entities'],
    [svg('<g id="a"><use href="#a"/></g>'), 'artwork/cycle'],
    [svg(`<defs><rect id="b0" width="1" height="1"/>${bomb}</defs><use href="#b20"/>`), 'artwork/too-large'],
    [svg('<path d="M0 0L1"/>'), 'artwork/path'],
    [svg('<path d="L1 1"/>'), 'artwork/path'],
    [svg('<path d="M0 0A1 1 0 2 0 5 5"/>'), 'artwork/path'],
    [svg('<path d="M0 0L1e300 5"/>'), 'artwork/path'],
    [svg('<rect width="9" height="9" transform="scale(1e200)"/>'), 'artwork/numbers'],
    [svg('<rect width="9" height="9" transform="turn(4)"/>'), 'artwork/transform'],
    [svg(''), 'artwork/no-lines'],
    [svg('<text>a</text>'), 'artwork/no-lines'],
    [svg(`<path d="${tangle}"/>`), 'artwork/tangled'],
    [svg(`<g>${'<path d="M0 0H90" fill="none" stroke="#000"/>'.repeat(700)}</g>`), 'artwork/tangled'],
    [svg('<g>'.repeat(400) + '</g>'.repeat(400)), 'xml/too-large'],
  ])('%.60s', (text, code) => void expectProblem(read(text), code));
});
