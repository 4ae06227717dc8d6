import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { SeamPath } from '../../src/model/seams.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import type { Pipeline } from '../../src/pipeline/pipeline.ts';
import { reportOf } from '../../src/pipeline/write-files.ts';
import { forgetWish } from '../../src/project/commands.ts';
import type { Project, SculptPart } from '../../src/project/project.ts';
import { cone, objOf, tube, type Solid } from '../reference/handbook/polygon-solids.ts';
import { recompute } from '../reference/recompute.mjs';
import { forAll } from '../support/for-all.ts';
import { block, inSheets, outcomeOf, solidProject } from '../support/run-solid.ts';

const BOX = block([0, 0, 0], [100, 100, 100]);
type Points = SeamPath['points'];
const path = (points: Points, more: Partial<SeamPath> = {}): SeamPath => ({ points, kind: 'butt', ...more });
const withPaths =
  (...paths: SeamPath[]) =>
  (part: SculptPart): SculptPart => ({ ...part, seams: { ...part.seams, paths } });

/** What a stranger finds wrong with the report. */
const faultsOf = (solid: Solid, outcome: Outcome): readonly unknown[] =>
  recompute(objOf(solid), JSON.parse(reportOf(outcome)) as never).faults;

const energiesOf = ({ flats }: Outcome): number[] => (flats ?? []).map((flat) => flat?.energy ?? NaN);

const TUBE = tube(16, 50, 50, () => 120);

describe('a box', () => {
  it('has one piece more where a face is parted along its diagonal', async () => {
    const plain = await outcomeOf(BOX);
    // Whichever way the face was cut into triangles: both diagonals are drawn, one after the other.
    for (const [a, b] of [
      [0, 3],
      [1, 2],
    ]) {
      const cut = await outcomeOf(BOX, withPaths(path([{ vertex: a }, { vertex: b }])));
      expect(cut.stopped).toBeNull();
      expect(cut.pieces).toHaveLength((plain.pieces?.length ?? 0) + 1);
      const seam = cut.seams?.find(({ trueLengthMm }) => Math.abs(trueLengthMm - 100 * Math.SQRT2) < 20);
      expect(seam).toBeDefined();
      expect(faultsOf(BOX, cut)).toEqual([]);
    }
  });

  it('has four pieces of a face that two lines cross', async () => {
    const cross = [path([{ vertex: 0 }, { vertex: 3 }]), path([{ vertex: 1 }, { vertex: 2 }])];
    const cut = await outcomeOf(BOX, withPaths(...cross));
    expect(cut.pieces).toHaveLength(9);
    expect(faultsOf(BOX, cut)).toEqual([]);
  });

  it('takes a line over an edge of the sculpt that is itself a seam, and keeps what was said of that', async () => {
    const over = path([
      { face: 0, bary: [0.25, 0.25, 0.25, 0.25] },
      { face: 2, bary: [0.25, 0.25, 0.25, 0.25] },
    ]);
    const cut = await outcomeOf(BOX, (part) => ({
      ...withPaths(over)(part),
      seamSettings: [{ edge: [0, 1], kind: 'lap', allowanceMm: 12 }],
    }));
    expect(cut.stopped).toBeNull();
    // The seam between the two faces, in two parts now, is a lap in both.
    expect(cut.cut?.chains.filter(({ kind }) => kind === 'lap').map(({ allowanceMm }) => allowanceMm)).toEqual([
      12, 12,
    ]);
    expect(cut.findings.filter(({ severity }) => severity === 'warning').map(({ code }) => code)).not.toContain(
      'wish/no-such-edge',
    );
    expect(faultsOf(BOX, cut)).toEqual([]);
  });
});

describe('what a path carries', () => {
  it.each([
    ['left', 1],
    ['right', 2],
  ] as const)('is a lap on its %s side, though both lie on one polygon', async (side, corner) => {
    const lap = (lapSide: 'left' | 'right') =>
      outcomeOf(BOX, withPaths(path([{ vertex: 0 }, { vertex: 3 }], { kind: 'lap', allowanceMm: 8, lapSide })));
    const { cut } = await lap(side);
    const chain = cut?.chains.find(({ kind }) => kind === 'lap');
    if (cut == null || chain === undefined) throw new Error('no lap');
    const patch = cut.patches[chain.sides[chain.lapSide].patch];
    const other = [...patch.meshVertices].find((v) => v === 1 || v === 2);
    // Seen from outside, which is from below: on the way from 0 (0, 0) to 3 (100, 100) the corner 1 (100, 0) is to the left.
    expect(other).toBe(corner);
  });

  it('holds its length and is straight', async () => {
    const wishes = { holdLength: true, straight: true } as const;
    const cut = await outcomeOf(BOX, withPaths(path([{ vertex: 0 }, { vertex: 3 }], wishes)));
    expect(cut.findings.filter(({ code }) => code.startsWith('wish/'))).toEqual([]);
    expect(
      cut.drawn?.part.edgeWishes.every(({ straight, holdLength }) => straight === true && holdLength === true),
    ).toBe(true);
  });
});

describe('a wish that a path cannot have', () => {
  it('is told by the path, and can be forgotten', async () => {
    const ring = path(
      [
        { face: 0, bary: [0.4, 0.2, 0.2, 0.2] },
        { face: 0, bary: [0.2, 0.4, 0.2, 0.2] },
        { face: 0, bary: [0.2, 0.2, 0.4, 0.2] },
        { face: 0, bary: [0.4, 0.2, 0.2, 0.2] },
      ],
      { straight: true },
    );
    const cut = await outcomeOf(BOX, withPaths(ring));
    const [told, ...more] = cut.findings.filter(({ code }) => code === 'wish/straight-ring');
    expect(more).toEqual([]);
    expect(told.text).toContain('through path 1 is to be straight');
    if (told.wish === undefined) throw new Error('no wish to forget');
    expect(forgetWish(told.wish).apply(cut.project).parts[0].seams.paths[0].straight).toBeUndefined();
  });
});

describe('a flat piece parted from a folded one inside a panel', () => {
  const TAPER = tube(6, 60, 40, () => 120);

  it.each([
    ['square across it', [0.2, 0.8, 0, 0], [0, 0, 0.8, 0.2]],
    ['slanting', [0.2, 0.8, 0, 0], [0, 0, 0.2, 0.8]],
    ['close to its corners', [0.05, 0.95, 0, 0], [0, 0, 0.95, 0.05]],
  ])('closes on it along a line %s', async (_, from, to) => {
    const line = path([
      { face: 0, bary: from },
      { face: 0, bary: to },
    ]);
    const cut = await outcomeOf(TAPER, withPaths(line));
    expect(cut.pieces?.map(({ bendStyle }) => bendStyle)).toEqual(['grooved', 'rolled']);
    // Kept at depths of their own they would stand 1 mm apart.
    expect(cut.dryFit?.worstGapMm).toBeLessThan(1e-9);
    expect(cut.dryFit?.worstOverlapMm).toBeLessThan(1e-9);
    expect(cut.dryFit?.perSeam.every(({ worstSlipMm }) => worstSlipMm < 1e-9)).toBe(true);
    expect(faultsOf(TAPER, cut)).toEqual([]);
  });

  it('passes its depth on to the flat piece behind it', async () => {
    const across = (share: number): SeamPath =>
      path([
        { face: 0, bary: [1 - share, share, 0, 0] },
        { face: 0, bary: [0, 0, share, 1 - share] },
      ]);
    const cut = await outcomeOf(TAPER, withPaths(across(0.7), across(0.3)));
    const [first, ...others] = (cut.cut?.shells ?? []).map(({ neutralFraction }) => neutralFraction);
    expect(others).toEqual([first, first]);
    expect(cut.dryFit?.worstGapMm).toBeLessThan(1e-9);
    expect(faultsOf(TAPER, cut)).toEqual([]);
  });
});

describe('things that roll out', () => {
  it('a cone parted from base to tip across its sides is the sector of its angle', async () => {
    const [sides, radius, height] = [24, 60, 80];
    const solid = { ...cone(sides, radius, height), seams: [] };
    const cut = await outcomeOf(solid, (part) => ({
      ...withPaths(path([{ face: 5, bary: [0.3, 0.7, 0] }, { vertex: sides }]))(part),
      modelIs: 'middle',
      layers: [{ ...part.layers[0], neutralFraction: 0.5 }],
    }));
    expect(cut.stopped).toBeNull();
    const [flat] = cut.flats ?? [];
    const patch = cut.cut?.patches[0];
    if (flat == null || patch === undefined) throw new Error('nothing flat');
    // Isometric: 4 is the energy of what keeps every length.
    expect(Math.abs(flat.energy - 4)).toBeLessThan(1e-9);
    const tip = [...patch.meshVertices].indexOf(sides);
    let turn = 0;
    for (let h = 0; h < patch.triangles.length; h += 1) {
      if (patch.triangles[h] !== tip) continue;
      const [p, q] = [h - (h % 3) + ((h + 1) % 3), h - (h % 3) + ((h + 2) % 3)].map((i) => patch.triangles[i]);
      const [ax, ay] = [flat.uv[2 * p] - flat.uv[2 * tip], flat.uv[2 * p + 1] - flat.uv[2 * tip + 1]];
      const [bx, by] = [flat.uv[2 * q] - flat.uv[2 * tip], flat.uv[2 * q + 1] - flat.uv[2 * tip + 1]];
      turn += Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    }
    // Each side is a triangle with its tip between two slants over a chord.
    const slant = Math.hypot(radius, height);
    const closed = sides * 2 * Math.asin((radius * Math.sin(Math.PI / sides)) / slant);
    expect(Math.abs(turn - closed)).toBeLessThan(1e-6);
    expect(faultsOf(solid, cut)).toEqual([]);
  });

  it('a tube parted along a helix is the parallelogram of its pitch', async () => {
    const sides = 24;
    const solid = { ...tube(sides, 50, 50, () => 120), seams: [] };
    // Once round while it climbs from rim to rim, a point on each edge along the tube.
    const round = Array.from({ length: sides + 1 }, (_, i): Points[number] => {
      const share = i / sides;
      if (i === 0) return { vertex: 0 };
      if (i === sides) return { vertex: sides };
      // Corners of face i: i, i + 1, above i + 1, above i.
      return { face: i, bary: [1 - share, 0, 0, share] };
    });
    const cut = await outcomeOf(solid, (part) => ({
      ...withPaths(path(round))(part),
      modelIs: 'middle',
      layers: [{ ...part.layers[0], neutralFraction: 0.5 }],
    }));
    expect(cut.stopped).toBeNull();
    const [flat] = cut.flats ?? [];
    const patch = cut.cut?.patches[0];
    if (flat == null || patch === undefined) throw new Error('nothing flat');
    expect(Math.abs(flat.energy - 4)).toBeLessThan(1e-9);
    const at = (v: number) =>
      [...patch.meshVertices.keys()]
        .filter((i) => patch.meshVertices[i] === v)
        .map((i) => [flat.uv[2 * i], flat.uv[2 * i + 1]] as const);
    const apart = (p: readonly number[], q: readonly number[]) => Math.hypot(p[0] - q[0], p[1] - q[1]);
    const girth = sides * 2 * 50 * Math.sin(Math.PI / sides);
    // Lower rim: corner 0 lies at both ends of it.
    const [low, high] = [at(0), at(sides)];
    expect(low).toHaveLength(2);
    expect(high).toHaveLength(2);
    expect(apart(low[0], low[1])).toBeCloseTo(girth, 6);
    expect(apart(high[0], high[1])).toBeCloseTo(girth, 6);
    const along = Math.min(...low.flatMap((p) => high.map((q) => apart(p, q))));
    const across = [...low.flatMap((p) => high.map((q) => apart(p, q)))].sort((p, q) => p - q);
    // Two sides are the helix, one diagonal stands upright.
    expect(along).toBeCloseTo(120, 6);
    expect(across[1]).toBeCloseTo(Math.hypot(girth, 120), 6);
    expect(faultsOf(solid, cut)).toEqual([]);
  });
});

describe('random lines over what rolls out', () => {
  it('leave every piece without stretch', () =>
    forAll(
      (rand) => {
        const solid = { ...(rand() < 0.5 ? tube(24, 50, 50, () => 120) : cone(24, 60, 80)) };
        const point = (): Points[number] => {
          const face = Math.floor(rand() * solid.faces.length);
          const weights = solid.faces[face].map(() => rand());
          const sum = weights.reduce((all, weight) => all + weight, 0);
          return { face, bary: weights.map((weight) => weight / sum) };
        };
        return {
          solid,
          paths: Array.from({ length: 1 + Math.floor(3 * rand()) }, () => path([point(), point(), point()])),
        };
      },
      async ({ solid, paths }) => {
        const cut = await outcomeOf(solid, (part) => ({
          ...withPaths(...paths)(part),
          modelIs: 'middle',
          layers: [{ ...part.layers[0], neutralFraction: 0.5 }],
        }));
        expect(cut.stopped).toBeNull();
        for (const flat of cut.flats ?? []) {
          const worst = [...(flat?.major ?? []), ...(flat?.minor ?? [])].reduce(
            (far, x) => Math.max(far, Math.abs(x - 1)),
            0,
          );
          expect(worst).toBeLessThan(1e-9);
        }
        expect(faultsOf(solid, cut)).toEqual([]);
      },
      { runs: 3, seed: 3 },
    ));
});

describe('a dart', () => {
  it('that ends in the middle of a face parts nothing and is told in both edges', async () => {
    const dart = path([
      { face: 3, bary: [0.5, 0.5, 0, 0] },
      { face: 3, bary: [0.3, 0.3, 0.2, 0.2] },
    ]);
    const plain = await outcomeOf(TUBE);
    const cut = await outcomeOf(TUBE, withPaths(dart));
    expect(cut.stopped).toBeNull();
    expect(cut.pieces).toHaveLength(plain.pieces?.length ?? 0);
    expect(cut.cut?.chains).toHaveLength((plain.cut?.chains.length ?? 0) + 2);
    expect(faultsOf(TUBE, cut)).toEqual([]);
  });
});

describe('a slit of one edge in the middle of a face', () => {
  it('opens nothing and stops nothing', async () => {
    const slit = path([
      { face: 0, bary: [0.4, 0.2, 0.2, 0.2] },
      { face: 0, bary: [0.41, 0.2, 0.2, 0.19] },
    ]);
    const cut = await outcomeOf(BOX, withPaths(slit));
    expect(cut.stopped).toBeNull();
    expect(cut.pieces).toHaveLength(6);
    expect(cut.springing?.seams.every(({ pullNPerMm }) => Number.isFinite(pullNPerMm))).toBe(true);
  });
});

describe('what a path says of a steep fold', () => {
  const fill = path(
    [
      { face: 0, bary: [1, 0, 0, 0] },
      { face: 0, bary: [0, 0, 1, 0] },
    ],
    { steep: 'fill' },
  );

  it('is said of the seam along it', async () => {
    const cut = await outcomeOf(BOX, withPaths(fill));
    expect(cut.cut?.chains.filter(({ steep }) => steep === 'fill')).toHaveLength(1);
    expect(cut.findings.filter(({ code }) => code.startsWith('wish/'))).toEqual([]);
  });

  it('is told along an open edge, and can be forgotten', async () => {
    const along = path(
      [
        { face: 3, bary: [0.8, 0.2, 0, 0] },
        { face: 3, bary: [0.2, 0.8, 0, 0] },
      ],
      { steep: 'fill' },
    );
    const cut = await outcomeOf(TUBE, withPaths(along));
    const told = cut.findings.find(({ code }) => code === 'wish/no-seam');
    expect(told?.text).toContain('through path 1 is to be built with a gap that is filled');
    if (told?.wish === undefined) throw new Error('no wish to forget');
    expect(forgetWish(told.wish).apply(cut.project).parts[0].seams.paths[0]).toEqual({ ...along, steep: undefined });
  });
});

describe('more sheets than the one that is seen', () => {
  it('are parted along the same line, or beside it', async () => {
    const line = path([
      { face: 4, bary: [0.5, 0.5, 0, 0] },
      { face: 4, bary: [0, 0, 0.5, 0.5] },
    ]);
    const cut = await outcomeOf(TUBE, (part) => {
      const wall = withPaths(line)(inSheets(part, 2, 2, 4));
      return { ...wall, layers: wall.layers.map((layer, i) => (i === 0 ? { ...layer, staggerMm: 15 } : layer)) };
    });
    expect(cut.stopped).toBeNull();
    expect(cut.layers.map(({ pieces }) => pieces?.length)).toEqual([2, 2, 2]);
    const [seen, same] = cut.layers.map((layer) => layer.cut);
    expect(same?.mesh).toBe(seen?.mesh);
    expect(seen?.mesh).toBe(cut.drawn?.mesh);
    // Sheets that are parted alike close alike.
    expect(cut.dryFit?.worstGapMm).toBeLessThan(0.5);
    expect(cut.dryFit?.worstOverlapMm).toBeLessThan(0.5);
  });
});

describe('what was made before', () => {
  const run = (project: Project, change: (part: SculptPart) => SculptPart, pipeline: Pipeline): Promise<Outcome> =>
    pipeline.run({ ...project, parts: [change(project.parts[0])] }, QUIET_WORK, { date: '2026-01-01' });

  it('is known again for all pieces a new line does not touch, whichever line is taken away', async () => {
    const { project, pipeline } = await solidProject(BOX);
    const [one, two] = [path([{ vertex: 0 }, { vertex: 3 }]), path([{ vertex: 4 }, { vertex: 7 }])];
    const plain = await run(project, (part) => part, pipeline);
    const first = await run(project, withPaths(one), pipeline);
    const both = await run(project, withPaths(one, two), pipeline);
    const second = await run(project, withPaths(two), pipeline);
    const again = await run(project, (part) => part, pipeline);
    const known = (before: Outcome, after: Outcome): number =>
      (after.flats ?? []).filter((flat) => flat !== null && before.flats?.includes(flat) === true).length;
    expect(known(plain, first)).toBe(5);
    expect(known(first, both)).toBe(6);
    // Numbers of what the first line added are gone, but the pieces are the same.
    expect(known(both, second)).toBe(6);
    expect(known(plain, again)).toBe(6);
    expect(second.flats).toHaveLength(7);
  });

  it('comes out the same as in a fresh run', async () => {
    const { project, pipeline } = await solidProject(TUBE);
    const line = path([
      { face: 4, bary: [0.5, 0.5, 0, 0] },
      { face: 6, bary: [0, 0, 0.5, 0.5] },
    ]);
    await run(project, withPaths(path([{ vertex: 3 }, { vertex: 19 }])), pipeline);
    const warm = await run(project, withPaths(line), pipeline);
    const cold = await outcomeOf(TUBE, withPaths(line));
    expect(energiesOf(warm)).toEqual(energiesOf(cold));
    expect(JSON.parse(reportOf(warm))).toEqual(JSON.parse(reportOf(cold)));
  });
});

describe('paths that cannot be drawn', () => {
  const strictly = async (...paths: SeamPath[]) => {
    const { project, pipeline } = await solidProject(BOX, withPaths(...paths));
    return pipeline.run(project, QUIET_WORK, { strictSeams: true });
  };

  it.each<[string, Points, string, string]>([
    ['an unknown corner', [{ vertex: 0 }, { vertex: 99 }], 'seams/path-point', 'Point 2 of path 2 is corner 99'],
    [
      'an unknown face',
      [{ face: 77, bary: [1, 0, 0] }, { vertex: 3 }],
      'seams/path-point',
      'Point 1 of path 2 lies on face 77',
    ],
    [
      'too few weights',
      [{ vertex: 3 }, { face: 0, bary: [0.5, 0.5] }],
      'seams/path-point',
      'Point 2 of path 2 has 2 weights for the 4 corners of face 0',
    ],
    [
      'weights of nothing',
      [{ vertex: 3 }, { face: 0, bary: [2, -1, 0, 0] }],
      'seams/path-point',
      'Point 2 of path 2 has weights that are not all 0 or more',
    ],
    ['one point', [{ vertex: 3 }], 'seams/path-short', 'Path 2 has fewer than two points'],
  ])('stop a seam file with %s, and are left out of a project', async (_, points, code, text) => {
    const good = path([{ vertex: 0 }, { vertex: 3 }]);
    const stopped = await strictly(good, path(points));
    expect(stopped.stopped?.problem.code).toBe(code);
    expect(stopped.stopped?.problem.text).toContain(text);
    const kept = await outcomeOf(BOX, withPaths(good, path(points)));
    expect(kept.pieces).toHaveLength(7);
    expect(kept.findings.filter((finding) => finding.code === code)).toHaveLength(1);
  });

  it('say between which points there is no way', async () => {
    const two = {
      corners: [...BOX.corners, ...BOX.corners.map(([x, y, z]) => [x + 500, y, z] as const)],
      faces: [...BOX.faces, ...BOX.faces.map((face) => face.map((v) => v + 8))],
      seams: [...BOX.seams, ...BOX.seams.map(([a, b]) => [a + 8, b + 8] as const)],
    };
    const { project, pipeline } = await solidProject(
      two,
      withPaths(path([{ vertex: 0 }, { vertex: 3 }, { vertex: 11 }])),
    );
    const { stopped } = await pipeline.run(project, QUIET_WORK, { strictSeams: true });
    expect(stopped?.problem.code).toBe('seams/no-path');
    expect(stopped?.problem.text).toContain('Points 2 and 3 of path 1');
  });

  it('of no length draw nothing', async () => {
    const dot = path([{ vertex: 3 }, { vertex: 3 }]);
    const cut = await outcomeOf(BOX, withPaths(dot));
    expect(cut.pieces).toHaveLength(6);
  });
});
