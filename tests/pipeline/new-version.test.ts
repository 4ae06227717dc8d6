import { describe, expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { pieceId } from '../../src/base/ids.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import type { SculptPart } from '../../src/project/project.ts';
import { takeNewVersion } from '../../src/project/version-commands.ts';
import { expectOk } from '../support/expect-ok.ts';
import { objOf, tube, type Solid } from '../reference/handbook/polygon-solids.ts';
import { block, solidProject } from '../support/run-solid.ts';

/** A part of one solid brought to another, and the chain run on both. */
async function carried(before: Solid, after: Solid, change?: (part: SculptPart) => SculptPart) {
  const { project, pipeline } = await solidProject(before, change);
  const bytes = objOf(after);
  const source = { hash: await contentHash(bytes), fileName: 'new.obj', format: 'obj' as const };
  pipeline.putSource(source.hash, { fileName: source.fileName, bytes });
  const first = await pipeline.run(project, QUIET_WORK);
  const { part, findings } = expectOk(await pipeline.newVersion(project.parts[0], source, QUIET_WORK));
  const second = await pipeline.run(takeNewVersion(part).apply(project), QUIET_WORK);
  return { part, findings, first, second };
}

const seamLengthOf = ({ seams }: Outcome): number =>
  (seams ?? []).reduce((sum, { trueLengthMm }) => sum + trueLengthMm, 0);

/** The same solid with its corners and faces numbered otherwise. */
function renumbered(solid: Solid): Solid {
  const { corners, faces } = solid;
  const last = corners.length - 1;
  return {
    corners: [...corners].reverse(),
    faces: [...faces].reverse().map((face) => [...face.slice(1), face[0]].map((v) => last - v)),
    seams: solid.seams.map(([a, b]) => [last - a, last - b]),
  };
}

const BOX = block([0, 0, 0], [100, 80, 60]);
const TUBE = tube(24, 50, 50, () => 120);

describe('what is named by its pieces', () => {
  it('is let go of and told where pieces have other names', async () => {
    const fillets = [
      { pieces: [pieceId('part-1.layer-1.f0'), pieceId('part-1.layer-1.f1')] as const, nth: 0, radiusMm: 8 },
    ];
    const { part, findings } = await carried(BOX, renumbered(BOX), (own) => ({ ...own, fillets }));
    expect(part.fillets).toBeUndefined();
    expect(findings.map(({ text }) => text).join()).toMatch(/1 fillet of clay has no place .* choose their seams anew/);
  });
});

describe('the same sculpt with other numbers', () => {
  it('keeps every seam, wish and area where it was', async () => {
    const { part, findings, first, second } = await carried(BOX, renumbered(BOX), (own) => ({
      ...own,
      seamSettings: [{ edge: [0, 1], kind: 'lap', allowanceMm: 10, lapFace: 0 }],
      edgeWishes: [{ edge: [0, 2], straight: true }],
      pieceSettings: [{ face: 1, name: 'lid' }],
      regions: [{ id: 'area-1', name: 'front', faces: [2], give: 'stiff' }],
      heldSeams: [[0, 1]],
      scale: { by: 'points', from: 0, to: 1, mm: 100 },
      simplify: { triangles: 12, keep: [0, 1, 5] },
    }));
    expect(part.simplify).toEqual({ triangles: 12, keep: [2, 6, 7] });
    expect(part.seams.paths).toEqual([]);
    expect(part.seams.edges).toHaveLength(12);
    const last = BOX.corners.length - 1;
    expect(part.seamSettings).toEqual([{ edge: [last, last - 1], kind: 'lap', allowanceMm: 10, lapFace: 5 }]);
    expect(part.edgeWishes).toEqual([{ edge: [last, last - 2], straight: true }]);
    expect(part.pieceSettings).toEqual([{ face: 4, name: 'lid' }]);
    expect(part.regions[0].faces).toEqual([3]);
    expect(part.heldSeams).toEqual([[last, last - 1]]);
    expect(part.scale).toEqual({ by: 'points', from: last, to: last - 1, mm: 100 });
    expect(findings.map(({ code }) => code)).toEqual(['carry/seams']);
    expect(second.stopped).toBeNull();
    expect(second.pieces?.filter(({ name }) => name === 'lid')).toHaveLength(1);
    expect(seamLengthOf(second)).toBeCloseTo(seamLengthOf(first), 6);
  });

  it('keeps lines across faces', async () => {
    const { part, first, second } = await carried(TUBE, renumbered(TUBE), (own) => ({
      ...own,
      seams: {
        edges: [],
        paths: [
          {
            points: [
              { face: 4, bary: [0.5, 0.5, 0, 0] },
              { face: 6, bary: [0, 0, 0.5, 0.5] },
            ],
            kind: 'butt',
          },
        ],
      },
    }));
    expect(part.seams.paths).toHaveLength(1);
    expect(second.pieces).toHaveLength(1);
    expect(second.seams?.[0].trueLengthMm).toBeCloseTo(first.seams?.[0].trueLengthMm ?? 0, 6);
  });
});

describe('a sculpt whose corners were moved', () => {
  it('keeps all numbers where its faces are the same', async () => {
    const moved = { ...BOX, corners: BOX.corners.map(([x, y, z], i) => [x + (i === 7 ? 30 : 0), y, z] as const) };
    const { part, second } = await carried(BOX, moved);
    expect(part.seams.edges).toEqual(BOX.seams);
    expect(second.pieces).toHaveLength(6);
  });
});

describe('a sculpt made of other triangles', () => {
  // Corners half a side on, so that no edge is where one was.
  const turned = (sides: number): Solid => {
    const turn = Math.PI / sides;
    const { corners, faces } = tube(sides, 50, 50, () => 120);
    return {
      corners: corners.map(([x, y, z]) => [
        x * Math.cos(turn) - y * Math.sin(turn),
        x * Math.sin(turn) + y * Math.cos(turn),
        z,
      ]),
      faces,
      seams: [],
    };
  };

  it('has lines across its faces where the seams ran', async () => {
    const { part, findings, first, second } = await carried(TUBE, turned(36), (own) => ({
      ...own,
      seamSettings: [{ edge: [0, 24], kind: 'lap', allowanceMm: 10 }],
      heldSeams: [[0, 24]],
    }));
    expect(part.seams.edges).toEqual([]);
    expect(part.seams.paths).toHaveLength(1);
    expect(part.seams.paths[0]).toMatchObject({ kind: 'lap', allowanceMm: 10, locked: true });
    expect(findings.map(({ code }) => code)).toEqual(['carry/seams']);
    expect(second.stopped).toBeNull();
    expect(second.pieces).toHaveLength(first.pieces?.length ?? 0);
    expect(second.seams?.[0].kind).toBe('lap');
    expect(second.seams?.[0].trueLengthMm).toBeCloseTo(120, 6);
  });

  it('is as large as it was, though its longest side is another', async () => {
    const taller = tube(36, 50, 50, () => 180);
    const { part, second } = await carried(TUBE, taller, (own) => ({
      ...own,
      scale: { by: 'size', axis: 'longest', mm: 240 },
    }));
    expect(part.scale).toMatchObject({ by: 'size', axis: 'longest', mm: 360 });
    expect(second.sculpt?.mmPerUnit).toBeCloseTo(2, 9);
  });
});

describe('what has no place any more', () => {
  it('is listed', async () => {
    const two: Solid = {
      corners: [...BOX.corners, ...BOX.corners.map(([x, y, z]) => [x + 300, y, z] as const)],
      faces: [...BOX.faces, ...BOX.faces.map((face) => face.map((v) => v + 8))],
      seams: [...BOX.seams, ...BOX.seams.map(([a, b]) => [a + 8, b + 8] as const)],
    };
    const { part, findings, second } = await carried(two, BOX, (own) => ({
      ...own,
      seams: { ...own.seams, paths: [{ points: [{ vertex: 8 }, { vertex: 11 }], kind: 'butt' }] },
      seamSettings: [{ edge: [8, 9], kind: 'lap', allowanceMm: 5 }],
      edgeWishes: [{ edge: [8, 9], straight: true }],
      pieceSettings: [{ face: 6, name: 'gone' }],
      regions: [{ id: 'area-1', name: 'gone', faces: [7], give: 'soft' }],
      scores: [{ id: 'score-1', edges: [[8, 9]], depthMm: 2, openMm: 1 }],
    }));
    expect(part.seams).toEqual({ edges: BOX.seams, paths: [] });
    expect([part.seamSettings, part.edgeWishes, part.pieceSettings, part.regions]).toEqual([[], [], [], []]);
    expect(part.scores).toBeUndefined();
    const lost = findings.filter(({ code }) => code === 'carry/lost');
    expect(lost.map(({ value, text }) => `${value}: ${text.split(' has')[0].split(' have')[0]}`)).toEqual([
      '12: 12 edges of seams',
      '1: 1 line across faces',
      '1: 1 wish for a seam',
      '1: 1 wish for an edge',
      '1: 1 edge of a scored line',
      '1: 1 area',
      '1: 1 wish for a piece',
    ]);
    expect(lost[0].where.point?.[0]).toBeGreaterThanOrEqual(300);
    expect(second.pieces).toHaveLength(6);
  });

  it('never leaps through a thin wall', async () => {
    // A board whose upper side is gone from the new version: nothing of it lands on the lower side.
    const board = block([0, 0, 0], [100, 100, 1]);
    const top = board.faces.findIndex((face) => face.every((v) => board.corners[v][2] === 1));
    const open = { ...board, faces: board.faces.filter((_, f) => f !== top) };
    const { part } = await carried(board, open, (own) => ({
      ...own,
      seams: {
        ...own.seams,
        paths: [
          {
            points: [
              { face: top, bary: [0.4, 0.2, 0.2, 0.2] },
              { face: top, bary: [0.2, 0.2, 0.4, 0.2] },
            ],
            kind: 'butt',
          },
        ],
      },
    }));
    expect(part.seams.paths).toEqual([]);
  });
});
