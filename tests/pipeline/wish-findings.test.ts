import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { layerId, partId } from '../../src/base/ids.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { FLATTEN_WISHES } from '../../src/model/flatten-settings.ts';
import { DEFAULT_FOAMS } from '../../src/model/foams.ts';
import { wishFindings } from '../../src/pipeline/wish-findings.ts';
import { reportOf } from '../../src/pipeline/write-files.ts';
import { forgetWish } from '../../src/project/commands.ts';
import type { SculptPart } from '../../src/project/project.ts';
import { cutPatches } from '../../src/steps/cut/cut-patches.ts';
import { seamChains } from '../../src/steps/cut/seam-chains.ts';
import { seamSetFromMarks } from '../../src/steps/seams/seam-set.ts';
import { expectOk } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { meshOf } from '../support/meshes.ts';
import { sampleProject } from '../support/run-sample.ts';

/** A flat field of squares, 4 wide: vertex x + 5 y, square x + 4 y. */
function field(rows: number): Mesh {
  return meshOf(
    Array.from({ length: 5 * (rows + 1) }, (_, i) => [i % 5, Math.floor(i / 5), 0] as const),
    Array.from({ length: 4 * rows }, (_, i) => {
      const v = (i % 4) + 5 * Math.floor(i / 4);
      return [v, v + 1, v + 6, v + 5];
    }),
  );
}

type Edge = readonly [number, number];
type Wishes = Parameters<typeof wishFindings>[2];
const [FOAM] = DEFAULT_FOAMS;
const LAYER = { id: layerId('layer-1'), foam: FOAM.id, thicknessMm: 6, neutralFraction: 0.4, allowForShrinkage: false };
const PLAIN: Wishes = {
  id: partId('part-1'),
  edgeWishes: [],
  flatten: FLATTEN_WISHES,
  layers: [LAYER],
  pieceSettings: [],
  regions: [],
  seamSettings: [],
};

function found(mesh: Mesh, edges: readonly Edge[], change: Partial<Wishes>, foam = FOAM) {
  const part = { ...PLAIN, ...change };
  const seams = expectOk(seamSetFromMarks(mesh, { edges, paths: [] }, true));
  const cut = cutPatches(mesh, seams, mesh.positions);
  const chains = seamChains(mesh, seams, cut, part.seamSettings);
  return wishFindings(mesh, { patches: cut.patches, chains }, part, foam);
}

const codes = (findings: ReturnType<typeof found>): string[] => findings.map(({ code }) => code);

/** Two rows parted down the middle: patch 0 lies left, patch 1 right. */
const TWO_ROWS = field(2);
const MIDDLE: readonly Edge[] = [
  [2, 7],
  [7, 12],
];
const onHalves = (change: Partial<Wishes>) => found(TWO_ROWS, MIDDLE, change);

/** Four rows with the ring of edges round the four squares in the middle. */
const FOUR_ROWS = field(4);
const RING: readonly Edge[] = [
  [6, 7],
  [7, 8],
  [8, 13],
  [13, 18],
  [18, 17],
  [17, 16],
  [16, 11],
  [11, 6],
];

describe('wishes that can be followed', () => {
  it('are passed over', () => {
    const change = {
      edgeWishes: [
        { edge: [7, 2], straight: true },
        { edge: [0, 1], holdLength: true },
      ],
      seamSettings: [{ edge: [12, 7], kind: 'lap', allowanceMm: 10, lapFace: 7 }],
      regions: [{ id: 'area-1', name: 'badge', faces: [0, 7], give: 'stiff' }],
      pieceSettings: [{ face: 3, name: 'cheek' }],
    } as const;
    expect(onHalves(change)).toEqual([]);
  });
});

describe('a wish for an edge', () => {
  it('that the sculpt does not have names its corners', () => {
    const [first, second] = onHalves({
      edgeWishes: [
        { edge: [2, 12], straight: true },
        { edge: [4, 99], holdLength: true, straight: true },
      ],
    });
    expect(first.code).toBe('wish/no-such-edge');
    expect(first.text).toBe(
      'The edge between corners 2 and 12 of the file (counted from 0) is to be straight, but the sculpt has no such edge: forget the wish, or say it of the edge you mean.',
    );
    expect(first.where).toEqual({ part: 'part-1', vertices: [2, 12] });
    expect(second.text).toContain(
      'corners 4 and 99 of the file (counted from 0) is to hold its length and be straight,',
    );
    expect(second.where.vertices).toEqual([4]);
  });

  it('inside the foam points at it, unless nothing is asked', () => {
    const findings = onHalves({ edgeWishes: [{ edge: [1, 6], holdLength: true }, { edge: [3, 8] }] });
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([['wish/no-foam-edge', 'warning']]);
    expect(findings[0].where.edges).toEqual([[1, 6]]);
  });

  it('speaks of corners by their numbers in the file, and points by those of the mesh', () => {
    // As if the file had one corner more, before all others, that no face uses.
    const mesh: Mesh = {
      ...TWO_ROWS,
      fileVertex: TWO_ROWS.fileVertex.map((n) => n + 1),
      vertexOfFile: Int32Array.of(-1, ...TWO_ROWS.vertexOfFile),
    };
    const [inside, nowhere] = found(mesh, [], {
      edgeWishes: [
        { edge: [2, 7], straight: true },
        { edge: [0, 7], straight: true },
      ],
    });
    expect(inside.text).toContain('corners 2 and 7 ');
    expect(inside.where.edges).toEqual([[1, 6]]);
    expect(nowhere.text).toContain('corners 0 and 7 ');
    expect(nowhere.where.vertices).toEqual([6]);
  });

  it('cannot be straight all round a ring', () => {
    const straight = { edgeWishes: [{ edge: [7, 6], straight: true }] } as const;
    const [finding, ...more] = found(FOUR_ROWS, RING, straight);
    expect([finding.code, more.length]).toEqual(['wish/straight-ring', 0]);
    expect(finding.where.edges).toHaveLength(8);
    expect(finding.where.seam).toBe('s1');
  });

  it('cannot be straight on the piece inside where only the one outside is parted', () => {
    // The seam up to the edge ends the chain at corner 7 for the outer piece; the inner one still has it all round.
    const slit: readonly Edge[] = [...RING, [2, 7]];
    expect(codes(found(FOUR_ROWS, slit, { edgeWishes: [{ edge: [7, 6], straight: true }] }))).toEqual([
      'wish/straight-ring',
    ]);
  });

  it('says no more once a later word on the same seam took it back', () => {
    const edgeWishes = [
      { edge: [7, 6], straight: true },
      { edge: [7, 8], straight: false },
    ] as const;
    expect(found(FOUR_ROWS, RING, { edgeWishes })).toEqual([]);
  });

  it('holds no length while lengths have no price', () => {
    const edgeWishes = [
      { edge: [2, 7], holdLength: true },
      { edge: [0, 1], holdLength: true },
    ] as const;
    const findings = onHalves({ edgeWishes, flatten: { ...FLATTEN_WISHES, seamPrice: 0 } });
    expect(codes(findings)).toEqual(['wish/nothing-holds', 'wish/nothing-holds']);
    expect(findings.map(({ text }) => text.slice(0, 21))).toEqual(['Seam A through corner', 'The open edge through']);
    expect(onHalves({ edgeWishes })).toEqual([]);
  });
});

describe('what is said of a seam', () => {
  const lap = (edge: Edge, lapFace?: number) =>
    onHalves({
      seamSettings: [{ edge, kind: 'lap', allowanceMm: 8, ...(lapFace === undefined ? {} : { lapFace }) }],
    });

  it('needs an edge, a seam there and a side that is there', () => {
    expect(codes(lap([2, 12]))).toEqual(['wish/no-such-edge']);
    expect(codes(lap([1, 6]))).toEqual(['wish/no-seam']);
    expect(lap([0, 1])[0]).toMatchObject({ code: 'wish/no-seam', where: { seam: 'o1' } });
    expect(lap([2, 7], 77)[0]).toMatchObject({ code: 'wish/no-such-side', where: { seam: 's1' } });
    expect(codes(lap([2, 7], 0))).toEqual([]);
  });

  it('is no loss where it only says what every seam is', () => {
    expect(onHalves({ seamSettings: [{ edge: [1, 6], kind: 'butt', allowanceMm: 0 }] })).toEqual([]);
  });

  it('is a loss where a butt seam was to be built otherwise for its fold', () => {
    const split = (edge: Edge) => onHalves({ seamSettings: [{ edge, kind: 'butt', allowanceMm: 0, steep: 'split' }] });
    expect(codes(split([2, 7]))).toEqual([]);
    const [told] = split([1, 6]);
    expect(told.code).toBe('wish/no-seam');
    expect(told.text).toContain('is to be built with strips between where it is too sharp for the blade, but the foam');
  });
});

describe('areas and pieces', () => {
  const area = (faces: readonly number[]) =>
    onHalves({ regions: [{ id: 'area-1', name: 'badge', faces, give: 'stiff' }] });

  it('an area that names no face of the sculpt says so', () => {
    expect(area([8, 9, 10, 11, 12, 13, 14])[0].text).toBe(
      'The area “badge” is to be stiff, but names no face of the sculpt (8, 9, 10, 11, 12 and 2 more, counted from 0): forget it, or mark it anew.',
    );
    expect(area([])[0].text).toContain('names no face: ');
  });

  it('an area that is there in part shows that part', () => {
    const [finding] = area([0, 8]);
    expect(finding).toMatchObject({ code: 'wish/area-in-part', value: 1, wish: { about: 'faces', faces: [8] } });
    expect(finding.where.triangles?.map((t) => TWO_ROWS.faceOfTriangle[t])).toEqual([0, 0]);
  });

  it('a piece is known by a face the sculpt has', () => {
    const [finding, ...more] = onHalves({ pieceSettings: [{ face: 7 }, { face: 8, name: 'cheek' }] });
    expect([finding.code, more.length]).toEqual(['wish/no-such-piece', 0]);
    expect(finding.text).toContain('the piece “cheek” with face 8 of the file');
  });
});

describe('shrinkage', () => {
  it('that nobody measured cannot be allowed for', () => {
    const layers = [{ ...LAYER, allowForShrinkage: true }];
    const shrinkage = { alongPct: 2, acrossPct: 1 };
    const [finding] = onHalves({ layers });
    expect(finding).toMatchObject({ code: 'wish/shrinkage-unknown', severity: 'warning' });
    expect(finding.text).toContain(FOAM.name);
    expect(found(TWO_ROWS, MIDDLE, { layers }, { ...FOAM, shrinkage })).toEqual([]);
  });
});

describe('through the whole chain', () => {
  it('wishes in vain stand in the report, and are gone once forgotten', async () => {
    const { project, pipeline } = await sampleProject('bracer');
    const [plain] = project.parts;
    const part: SculptPart = {
      ...plain,
      layers: plain.layers.map((layer) => ({ ...layer, allowForShrinkage: true })),
      flatten: { ...plain.flatten, seamPrice: 0 },
      regions: [
        { id: 'area-1', name: 'badge', faces: [1, 99_999], give: 'stiff' },
        { id: 'area-2', name: 'rim', faces: [88_888], give: 'soft' },
      ],
      edgeWishes: [
        { edge: [0, 99_999], straight: true },
        { edge: plain.seams.edges[0], holdLength: true },
      ],
      seamSettings: [{ edge: [0, 77_777], kind: 'lap', allowanceMm: 8 }],
      pieceSettings: [{ face: 66_666, quantity: 2 }],
    };
    const vain = await pipeline.run({ ...project, parts: [part] }, QUIET_WORK);
    const wishes = vain.findings.filter(({ code }) => code.startsWith('wish/'));
    expect(codes(wishes)).toEqual([
      'wish/no-such-edge',
      'wish/nothing-holds',
      'wish/no-such-edge',
      'wish/area-in-part',
      'wish/no-such-area',
      'wish/no-such-piece',
      'wish/shrinkage-unknown',
    ]);
    const report = JSON.parse(reportOf(vain)) as { findings: { text: string; where: { part: string } }[] };
    const schema = JSON.parse(
      readFileSync(new URL('../../shared/report.schema.json', import.meta.url), 'utf8'),
    ) as Schema;
    expect(schemaFaults(schema, report)).toEqual([]);
    for (const { text } of wishes) {
      expect(report.findings.find((told) => told.text === text)?.where.part).toBe(part.id);
    }
    const commands = wishes.map(({ wish }) => (wish === undefined ? null : forgetWish(wish)));
    const clean = commands.reduce((before, command) => command?.apply(before) ?? before, vain.project);
    const after = await pipeline.run(clean, QUIET_WORK);
    expect(after.findings.filter(({ code }) => code.startsWith('wish/'))).toEqual([]);
    expect(clean.parts[0].regions).toEqual([{ id: 'area-1', name: 'badge', faces: [1], give: 'stiff' }]);
  });
});
