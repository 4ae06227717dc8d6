import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { foamId, partId } from '../../src/base/ids.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { IN_PLACE } from '../../src/geom/matrix4.ts';
import type { FoamPiece } from '../../src/model/foam-piece.ts';
import { addPlain, type NewPlain } from '../../src/project/plain-commands.ts';
import { setHiddenSide } from '../../src/project/hidden-commands.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import { PLAIN_STRIP } from '../../src/project/trim-part.ts';
import type { Solid } from '../reference/handbook/polygon-solids.ts';
import { expectOk } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { solidProject, type PartChange } from '../support/run-solid.ts';

const STRIP = PLAIN_STRIP;
const SCHEMA = JSON.parse(readFileSync('shared/project.schema.json', 'utf8')) as Schema;
const SIDES = 32;
const ROWS = 4;

/** An open tube or cone of radius `low` at z 0 and `high` at the top, with a seam down its side and one round its middle. */
function tube(low: number, high: number, height: number): Solid {
  const at = (row: number, i: number): number => row * SIDES + (i % SIDES);
  const columns = [...Array(SIDES).keys()];
  const rows = [...Array(ROWS + 1).keys()];
  return {
    corners: rows.flatMap((row) =>
      columns.map((i): [number, number, number] => {
        const [r, angle] = [low + ((high - low) * row) / ROWS, (2 * Math.PI * i) / SIDES];
        return [r * Math.cos(angle), r * Math.sin(angle), (height * row) / ROWS];
      }),
    ),
    faces: rows
      .slice(1)
      .flatMap((row) => columns.map((i) => [at(row - 1, i), at(row - 1, i + 1), at(row, i + 1), at(row, i)])),
    seams: [
      ...rows.slice(1).map((row): [number, number] => [at(row - 1, 0), at(row, 0)]),
      ...columns.map((i): [number, number] => [at(ROWS / 2, i), at(ROWS / 2, i + 1)]),
    ],
  };
}

const base = (name: string) => ({ name, transform: IN_PLACE, copies: 1, foams: [foamId('eva-2')] });
const SCULPT = partId('part-1');

/** An edge of the seam round the middle. */
const MIDDLE = [[(ROWS / 2) * SIDES, (ROWS / 2) * SIDES + 1]] as const;

const BAND = {
  kind: 'trim',
  ...base('Band'),
  on: SCULPT,
  along: { by: 'edges', edges: MIDDLE },
  strip: STRIP,
} satisfies NewPlain;
const COVERS: NewPlain = { kind: 'covers', ...base('Covers'), on: SCULPT, strip: STRIP, mostTurnDeg: 30 };
const STRAP: NewPlain = {
  kind: 'strap',
  ...base('Belt'),
  strap: {
    girthMm: 400,
    widthMm: 25,
    overlapMm: 120,
    holes: { count: 5, spacingMm: 20, diameterMm: 5 },
    tip: { kind: 'pointed', lengthMm: 20 },
    buckle: { barMm: 5, tabMm: 35, slotWidthMm: 4 },
    keeperWidthMm: 15,
    isReinforced: false,
  },
};

/** The model is the back of 6 mm of foam, so strips of 2 mm keep their length 7 mm outside it. */
const onBack: PartChange = (part) => ({ ...part, modelIs: 'back' });
const NEUTRAL_MM = 7;
/** The wall keeps its own length 3 mm outside the model. */
const WALL_MM = 3;

/** Distance of a point from a line of straight parts. */
function farFrom(line: Float64Array, x: number, y: number): number {
  let least = Infinity;
  for (let i = 2; i < line.length; i += 2) {
    const [ax, ay, bx, by] = line.subarray(i - 2, i + 2);
    const share = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2);
    const at = Math.min(1, Math.max(0, share));
    least = Math.min(least, Math.hypot(x - ax - at * (bx - ax), y - ay - at * (by - ay)));
  }
  return least;
}

/** The neutral edge of a piece along a seam. */
function seamEdge(piece: FoamPiece, letter: string): Float64Array {
  const edge = piece.edges.find((one) => one.letter === letter);
  if (edge === undefined) throw new Error(`no edge ${letter}`);
  const ring = piece.neutralOutline;
  return Float64Array.from(
    Array.from(edge.stationMm.keys()).flatMap((j) => {
      const at = (2 * (edge.from + j)) % ring.length;
      return [ring[at], ring[at + 1]];
    }),
  );
}

const lengthOf = (points: Float64Array): number => {
  let sum = 0;
  for (let i = 2; i < points.length; i += 2)
    sum += Math.hypot(points[i] - points[i - 2], points[i + 1] - points[i - 1]);
  return sum;
};

const placings = (piece: FoamPiece, strip: string, what: 'edge' | 'mark') =>
  (piece.placings ?? []).filter((one) => one.strip === strip && one.what === what).map(({ points }) => points);

describe('strips on a tube, on the outside of its foam', async () => {
  const { project, pipeline } = await solidProject(tube(50, 50, 120), onBack);
  const all = [BAND, COVERS, STRAP, { ...COVERS, without: MIDDLE } as NewPlain].reduce(
    (made, part) => addPlain(part).apply(made),
    project,
  );
  const outcome = await pipeline.run(all, QUIET_WORK);
  const [band, covers, belt, bare] = outcome.plain;
  const pieces = outcome.pieces ?? [];

  it('have the length of their neutral surface and are straight when flat', () => {
    // The facets of the tube, moved out as planes: 2 n tan(pi/n) times their distance from the axis.
    const apothem = 50 * Math.cos(Math.PI / SIDES) + NEUTRAL_MM;
    const [strip] = band.work?.laid?.strips ?? [];
    expect(strip.lengthMm).toBeCloseTo(2 * SIDES * Math.tan(Math.PI / SIDES) * apothem, 6);
    // A circle round a cylinder is a geodesic (do Carmo, Differential Geometry of Curves and Surfaces, 4-4).
    expect(Math.abs(strip.lengthMm / (2 * Math.PI * (50 + NEUTRAL_MM)) - 1)).toBeLessThan(4e-3);
    expect(strip.leastFlatRadiusMm).toBeGreaterThan(1e6);
    expect(band.pieces[0].areaMm2).toBeCloseTo(20 * strip.lengthMm, 3);
  });

  it('leave lines at half their width beside the seam on both its pieces, within 0.2 mm, and marks beside their own', () => {
    expect(pieces).toHaveLength(2);
    const ways = [...new Set(band.pieces[0].draft.lines.map(({ points }) => Math.round(1000 * points[0]) / 1000))];
    for (const piece of pieces) {
      const seam = seamEdge(piece, 'B');
      const edges = placings(piece, 'Band', 'edge');
      const worst = edges.flatMap((points) =>
        Array.from({ length: points.length / 2 }, (_, i) =>
          Math.abs(farFrom(seam, points[2 * i], points[2 * i + 1]) - 10),
        ),
      );
      expect(Math.max(...worst)).toBeLessThan(0.2);
      // All round the wall's own neutral surface.
      expect(edges.reduce((sum, points) => sum + lengthOf(points), 0)).toBeCloseTo(
        2 * SIDES * Math.tan(Math.PI / SIDES) * (50 * Math.cos(Math.PI / SIDES) + WALL_MM),
        2,
      );
      const marks = placings(piece, 'Band', 'mark');
      expect(marks).toHaveLength(ways.length);
      const apart = (list: readonly number[]): number[] =>
        list.toSorted((a, b) => a - b).map((at, i, all) => at - all[Math.max(0, i - 1)]);
      const along = marks.map((points) => lengthOf(alongTo(seam, points[0], points[1])));
      const ratio = (50 * Math.cos(Math.PI / SIDES) + WALL_MM) / (50 * Math.cos(Math.PI / SIDES) + NEUTRAL_MM);
      const [found, wanted] = [apart(along), apart(ways.map((way) => way * ratio))];
      const turned = wanted.slice(1).toReversed();
      const off = (other: readonly number[]): number =>
        Math.max(...found.slice(1).map((mm, i) => Math.abs(mm - other[i])));
      expect(Math.min(off(wanted.slice(1)), off(turned))).toBeLessThan(0.2);
    }
  });

  it('are drawn on the paper of the pieces they lie on, which then is another', async () => {
    const plain = await pipeline.run(project, QUIET_WORK);
    for (const [i, piece] of pieces.entries()) {
      const { strokes } = outcome.templates?.[i].drawing ?? { strokes: [] };
      expect(strokes.filter(({ role }) => role === 'placement')).toHaveLength(
        placings(piece, 'Band', 'edge').length + placings(piece, 'Covers', 'edge').length,
      );
      expect(outcome.templates?.[i].drawing.words.some(({ text }) => text.includes('between the dots'))).toBe(true);
      expect(piece.revision).not.toBe(plain.pieces?.[i].revision);
      expect(piece.outline).toBe(plain.pieces?.[i].outline);
    }
    // How the pieces fit is not worked out again.
    expect(outcome.dryFit).toBe(plain.dryFit);
  });

  it('cover all seams in the fewest runs; those that are to stay bare stay so', () => {
    expect(covers.work?.laid?.strips.map(({ line }) => line)).toEqual(['A-C', 'B']);
    expect(covers.work?.laid?.strips[0].lengthMm).toBeCloseTo(120, 6);
    expect(bare.work?.laid?.strips.map(({ line }) => line)).toEqual(['A-C']);
  });

  it('are made anew only when something of theirs changes, and a strap stands by itself', async () => {
    const again = await pipeline.run({ ...all, name: 'other' }, QUIET_WORK);
    expect(again.plain[0].work).toBe(band.work);
    expect(again.pieces).toBe(outcome.pieces);
    expect(belt.pieces.map(({ name }) => name)).toEqual(['Belt Strap', 'Belt Keeper loop']);
    const [{ findings }, laid] = [outcome, outcome.sheets?.sheets.flatMap(({ placements }) => placements) ?? []];
    for (const { id } of outcome.plain.flatMap((one) => one.pieces))
      expect(laid.some(({ piece }) => piece === id)).toBe(true);
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it('follow a line drawn across the sculpt, leave the hidden side bare, and say what they cannot follow', async () => {
    const points = [0, 3, 6, 9].map((i) => ({ face: SIDES + i, bary: [0.25, 0.25, 0.25, 0.25] }));
    const wished: readonly NewPlain[] = [
      { ...BAND, along: { by: 'line', points, closed: false } },
      { ...BAND, strip: { ...STRIP, widthMm: 4, profile: { kind: 'half-round', from: 'bought' } } },
      { ...BAND, along: { by: 'seams', ids: ['Q'] } },
      COVERS,
    ];
    // The seam down its side looks to +x, which is the right of a file with y up.
    const said = setHiddenSide('right').apply(wished.reduce((made, part) => addPlain(part).apply(made), project));
    const { plain, findings } = await pipeline.run(said, QUIET_WORK);
    const [line, bought, lost, hidden] = plain.map(({ work, pieces: own }) => ({ strips: work?.laid?.strips, own }));
    const facet = 2 * Math.tan(Math.PI / SIDES) * (50 * Math.cos(Math.PI / SIDES) + NEUTRAL_MM);
    expect(line.strips?.[0].lengthMm).toBeCloseTo(9 * facet, 3);
    expect(line.own).toHaveLength(1);
    // Bought edging is cut from no sheet.
    expect(bought.own).toEqual([]);
    const told = (code: string) => findings.find((one) => one.code === code);
    expect(told('trim/buy')?.value).toBeCloseTo(bought.strips?.[0].lengthMm ?? 0, 9);
    expect(lost.strips).toBeUndefined();
    expect(told('trim/no-seam')?.text).toContain('it has A, B, C, o1, o2');
    expect(hidden.strips?.map((strip) => strip.line)).toEqual(['B']);
    expect(told('trim/left-out')?.text).toContain('A, C');
  });

  it('are kept in the project file', async () => {
    const text = writeProjectFile(
      all,
      new Map(all.parts.map(({ source }) => [source.hash, pipeline.sourceOf(source.hash)!])),
    );
    expect(schemaFaults(SCHEMA, JSON.parse(text))).toEqual([]);
    expect(expectOk(await readProjectFile(text, 'tube.json')).project).toEqual(all);
  });
});

/** The part of a line from its start to the place nearest to a point. */
function alongTo(line: Float64Array, x: number, y: number): Float64Array {
  let [best, least] = [0, Infinity];
  let foot: [number, number] = [line[0], line[1]];
  for (let i = 2; i < line.length; i += 2) {
    const far = farFrom(line.subarray(i - 2, i + 2), x, y);
    if (far >= least) continue;
    const [ax, ay, bx, by] = line.subarray(i - 2, i + 2);
    const at = Math.min(
      1,
      Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2)),
    );
    [best, least, foot] = [i, far, [ax + at * (bx - ax), ay + at * (by - ay)]];
  }
  return Float64Array.from([...line.subarray(0, best), ...foot]);
}

it('a strip round a cone is the arc of its slant, and so is the line under it', async () => {
  const lean = Math.atan2(20, 120);
  const { project, pipeline } = await solidProject(tube(60, 40, 120), onBack);
  const outcome = await pipeline.run(addPlain(BAND).apply(project), QUIET_WORK);
  const [strip] = outcome.plain[0].work?.laid?.strips ?? [];
  // Geodesic curvature of a parallel of a cone: sin(half angle) / radius (do Carmo, 4-4); moved out by d its radius grows by d cos(half angle).
  const radius = 50 + NEUTRAL_MM * Math.cos(lean);
  expect(Math.abs(strip.leastFlatRadiusMm / (radius / Math.sin(lean)) - 1)).toBeLessThan(3e-3);
  expect(Math.abs(strip.flatTurnRad) / (2 * Math.PI * Math.sin(lean))).toBeCloseTo(1, 2);
  expect(Math.abs(strip.lengthMm / (2 * Math.PI * radius) - 1)).toBeLessThan(4e-3);
  // The pieces keep their length 3 mm out; on them its edges are arcs 10 mm up and down the slant.
  const lengths = (outcome.pieces ?? []).map((piece) => Math.max(...placings(piece, 'Band', 'edge').map(lengthOf)));
  for (const [i, sign] of [1, -1].entries()) {
    const wanted = 2 * Math.PI * (50 + WALL_MM * Math.cos(lean) + sign * 10 * Math.sin(lean));
    expect(Math.abs(lengths[i] / wanted - 1)).toBeLessThan(4e-3);
  }
});
