import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { foamId, partId } from '../../src/base/ids.ts';
import { contentHash } from '../../src/base/hash.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { IN_PLACE } from '../../src/geom/matrix4.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { artworkFromSvg, USUAL_ARTWORK } from '../../src/pipeline/artwork.ts';
import type { EngravingPart } from '../../src/project/plain-part.ts';
import { addPlain } from '../../src/project/plain-commands.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import type { Solid } from '../reference/handbook/polygon-solids.ts';
import { expectOk } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { solidProject } from '../support/run-solid.ts';

const SCHEMA = JSON.parse(readFileSync('shared/project.schema.json', 'utf8')) as Schema;
const [SIDES, RADIUS, HEIGHT] = [24, 50, 120];
/** The model is the back of 6 mm of foam: it keeps its length 3 mm outside the model, and its face lies 6 mm outside. */
const [NEUTRAL_MM, FACE_MM] = [3, 6];

/** An open tube about z with a seam down its side. */
const tube: Solid = {
  corners: [0, HEIGHT / 2, HEIGHT].flatMap((z) =>
    Array.from({ length: SIDES }, (_, i): [number, number, number] => {
      const angle = (2 * Math.PI * i) / SIDES;
      return [RADIUS * Math.cos(angle), RADIUS * Math.sin(angle), z];
    }),
  ),
  faces: [0, SIDES].flatMap((row) =>
    Array.from({ length: SIDES }, (_, i) => {
      const next = (i + 1) % SIDES;
      return [row + i, row + next, row + SIDES + next, row + SIDES + i];
    }),
  ),
  seams: [
    [0, SIDES],
    [SIDES, 2 * SIDES],
  ],
};

const CIRCLE_MM = 15;
const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="80mm" height="60mm" viewBox="0 0 80 60">
  <g fill="none" stroke="black"><path d="M 5 50 L 75 12"/><circle cx="30" cy="30" r="${CIRCLE_MM}"/></g></svg>`;
const bytes = new TextEncoder().encode(svg);
const source = { hash: await contentHash(bytes), fileName: 'line-and-ring.svg' };

const ENGRAVING: Omit<EngravingPart, 'id'> = {
  kind: 'engraving',
  name: 'Ring',
  transform: IN_PLACE,
  copies: 1,
  foams: [foamId('eva-2')],
  source,
  on: partId('part-1'),
  drawing: { from: 'svg', choice: USUAL_ARTWORK },
  at: { by: 'nearest', mm: [-70, 4, 57] },
  up: [0, 0, 1],
  trueOn: 'surface',
};

const { project, pipeline } = await solidProject(tube, (part) => ({ ...part, modelIs: 'back' }));
pipeline.putSource(source.hash, { fileName: source.fileName, bytes });
const run = (change: Partial<typeof ENGRAVING>): Promise<Outcome> =>
  pipeline.run(addPlain({ ...ENGRAVING, ...change }).apply(project), QUIET_WORK);

/** How far a point is from a line of straight parts, mm. */
function farFrom(points: readonly (readonly [number, number])[], [x, y]: readonly [number, number]): number {
  return Math.min(
    ...points.slice(1).map(([bx, by], i) => {
      const [ax, ay] = points[i];
      const share = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2);
      const at = Math.min(1, Math.max(0, share));
      return Math.hypot(x - ax - at * (bx - ax), y - ay - at * (by - ay));
    }),
  );
}

const pairs = (points: Float64Array): (readonly [number, number])[] =>
  Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i], points[2 * i + 1]] as const);

describe('a line and a circle engraved on a tube', () => {
  /** Facets moved out as planes: each is 2 tan(pi/n) times as wide as it is far from the axis. */
  const apothem = (mm: number): number => RADIUS * Math.cos(Math.PI / SIDES) + mm;

  it.each([
    // True on the face, it is drawn narrower round the tube by as much as the foam keeps its length farther in.
    ['surface', apothem(NEUTRAL_MM) / apothem(FACE_MM)],
    ['piece', 1],
  ] as const)('come out on the flat piece as they are when true on the %s', async (trueOn, round) => {
    const outcome = await run({ trueOn });
    expect(outcome.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    const [piece] = outcome.pieces ?? [];
    const lines = (piece.placings ?? []).filter(({ what }) => what === 'engraving');
    expect(lines.map(({ strip, closed }) => [strip, closed])).toEqual(
      expect.arrayContaining([
        ['Ring', true],
        ['Ring', false],
      ]),
    );
    expect(lines).toHaveLength(2);
    const [ring, line] = [true, false].map((isClosed) =>
      pairs(lines.find(({ closed }) => closed === isClosed)!.points),
    );
    // The drawing's own frame, y up: the line rises by 38 over 70, the circle's middle lies 25 beside and 20 above its start.
    const [from, to] = [line[0], line[line.length - 1]];
    const isTurned = farFrom(ring, from) > farFrom(ring, to);
    const [start, end] = isTurned ? [to, from] : [from, to];
    expect(Math.hypot(end[0] - start[0], end[1] - start[1])).toBeCloseTo(Math.hypot(70 * round, 38), 6);
    for (const p of line) expect(farFrom([start, end], p)).toBeLessThan(1e-6);
    const turn = Math.atan2(end[1] - start[1], end[0] - start[0]) - Math.atan2(38, 70 * round);
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    const drawn = ring.map(([x, y]) => {
      const [u, v] = [x - start[0], y - start[1]];
      return [(c * u + s * v) / round - 25, c * v - s * u - 20] as const;
    });
    // Corners of the drawing lie on the circle, and what is between them on its chords.
    const artwork = expectOk(artworkFromSvg(svg, USUAL_ARTWORK));
    const outline = artwork.pieces.flatMap(({ regions }) => regions)[0].outline.ring;
    const [[x0, y0]] = artwork.pieces.flatMap(({ lines: open }) => open).map(({ points }) => pairs(points)[0]);
    const chords = pairs(outline).map(([x, y]) => [x - x0 - 25, y - y0 - 20] as const);
    const corners = drawn.filter(([x, y]) => Math.abs(Math.hypot(x, y) - CIRCLE_MM) < 1e-6);
    expect(corners.length).toBeGreaterThanOrEqual(chords.length);
    for (const p of chords) {
      expect(Math.abs(Math.hypot(...p) - CIRCLE_MM)).toBeLessThan(1e-6);
      expect(Math.min(...drawn.map(([x, y]) => Math.hypot(x - p[0], y - p[1])))).toBeLessThan(1e-6);
    }
    for (const p of drawn) expect(farFrom([...chords, chords[0]], p)).toBeLessThan(1e-6);
    // On paper they are lines to engrave, and the work says how deep; no foam is cut for them.
    const { strokes, words } = outcome.templates?.[0].drawing ?? { strokes: [], words: [] };
    expect(strokes.filter(({ role }) => role === 'engrave')).toHaveLength(2);
    expect(words.some(({ text }) => text.includes('Ring: engrave'))).toBe(true);
    expect(outcome.plain[0].pieces).toEqual([]);
    expect(outcome.plain[0].work?.steps.map(({ work, text }) => [work, text.includes('2\u00a0mm deep')])).toEqual([
      ['engrave', true],
    ]);
  });

  it('are told where they have no place, and where they run off', async () => {
    const told = async (change: Partial<typeof ENGRAVING>): Promise<readonly string[]> => {
      const { findings, plain } = await run(change);
      return findings.filter(({ where }) => where.part === plain[0].part.id).map(({ code }) => code);
    };
    const corner = (vertex: number) => ({ at: { by: 'point' as const, point: { vertex } } });
    expect(await told(corner(3 * SIDES))).toEqual(['engraving/no-point']);
    // A corner of the rim has no surface all round.
    expect(await told(corner(5))).toEqual(['wrap-art/place']);
    expect(await told({ on: partId('part-9') })).toEqual(['trim/no-sculpt']);
    expect(await told({ source: { ...source, hash: '0'.repeat(64) } })).toEqual(['plain/no-source']);
    expect(await told({ at: { by: 'nearest', mm: [-70, 4, 112] } })).toEqual(['wrap-art/off']);
    expect(await told(corner(SIDES + 12))).toEqual([]);
  });

  it('are kept in the project file', async () => {
    const whole = addPlain(ENGRAVING).apply(project);
    const files = [project.parts[0].source, source].map(({ hash }) => [hash, pipeline.sourceOf(hash)!] as const);
    const text = writeProjectFile(whole, new Map(files));
    expect(schemaFaults(SCHEMA, JSON.parse(text))).toEqual([]);
    expect(expectOk(await readProjectFile(text, 'tube.json')).project).toEqual(whole);
    const broken = text.replace(/"up": ?\[\s*0,\s*0,\s*1\s*\]/, '"up": [0, 0, 0]');
    expect(broken).not.toBe(text);
    expect((await readProjectFile(broken, 'tube.json')).ok).toBe(false);
  });
});
