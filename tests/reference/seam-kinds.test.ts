import { describe, expect, it } from 'vitest';
import { foamId } from '../../src/base/ids.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { boxOfPoints, ringArea } from '../../src/geom/ring.ts';
import { rad } from '../../src/geom/vec.ts';
import { FOAM_RULES } from '../../src/model/foam-settings.ts';
import type { FoamPiece } from '../../src/model/foam-piece.ts';
import type { SeamSetting } from '../../src/model/seams.ts';
import { DryFits } from '../../src/pipeline/dry-fit.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { partBends } from '../../src/steps/foam/part-bends.ts';
import { objOf, panels, tube, type Solid } from './handbook/polygon-solids.ts';
import { PLATONIC } from './handbook/uniform-solids.ts';
import { expectHonest } from './expect-honest.ts';
import { runChain, type ChainInput } from './run-chain.ts';

/** Far under any saw, mm. */
const EXACT_MM = 1e-9;

const [LENGTH_MM, WIDTH_MM] = [80, 100];

async function made(solid: Solid, change: Partial<ChainInput> = {}): Promise<Outcome> {
  const bytes = objOf(solid);
  const { outcome, report } = await runChain({
    fileName: 'solid.obj',
    bytes,
    seams: solid.seams,
    scale: { by: 'unit', unit: 'mm' },
    thicknessMm: 6,
    modelIs: 'face',
    neutralFraction: 0.5,
    ...change,
  });
  expectHonest(bytes, report);
  return outcome;
}

const foam = (face: number, thicknessMm: number) => ({ face, foam: foamId(`eva-${thicknessMm}`) });
const rebate = (edge: readonly [number, number], standFace?: number): SeamSetting => ({
  edge,
  kind: 'rebate',
  allowanceMm: 0,
  ...(standFace === undefined ? {} : { standFace }),
});

/** How wide the face and the back of a panel are, mm. */
function sizesOf(piece: FoamPiece): { face: number[]; back: number[] } {
  const sizeOf = (ring: Float64Array): number[] => {
    const { minX, maxX, minY, maxY } = boxOfPoints(ring);
    return [maxX - minX, maxY - minY].sort((a, b) => a - b);
  };
  return { face: sizeOf(piece.outline), back: sizeOf(piece.otherOutline) };
}

function expectClosed({ dryFit }: Outcome, seams: number): void {
  expect(dryFit?.perSeam).toHaveLength(seams);
  for (const { worstGapMm, worstOverlapMm, worstSlipMm, worstStepMm } of dryFit?.perSeam ?? [])
    for (const miss of [worstGapMm, worstOverlapMm, worstSlipMm, worstStepMm]) expect(miss).toBeLessThan(EXACT_MM);
}

const piecesOf = ({ pieces }: Outcome): readonly FoamPiece[] => pieces ?? [];
/** Panels of {@link panels} lie as they are listed: the one of face 0 first. */
const thicknessOf = (outcome: Outcome): number[] => piecesOf(outcome).map(({ thicknessMm }) => thicknessMm);

describe('two panels on a right angle', () => {
  const corner = panels(LENGTH_MM, WIDTH_MM, rad(90));
  const [seam] = corner.seams;

  // Whichever stands is shorter than the sculpt by the other's thickness, on both sides of the foam; the other keeps its size.
  it.each([
    [6, 10],
    [10, 6],
    [6, 6],
  ])('one of %i mm stands on one of %i mm', async (standing, through) => {
    const outcome = await made(corner, {
      seamSettings: [rebate(seam, 1)],
      pieceSettings: [foam(0, through), foam(1, standing)],
    });
    expect(thicknessOf(outcome)).toEqual([through, standing]);
    const [runs, stands] = piecesOf(outcome).map(sizesOf);
    for (const side of ['face', 'back'] as const) {
      expect(runs[side][0]).toBeCloseTo(LENGTH_MM, 9);
      expect(stands[side][0]).toBeCloseTo(LENGTH_MM - through, 9);
    }
    expectClosed(outcome, 1);
    const [{ standSide, bevelDeg, step }] = outcome.seams ?? [];
    expect(standSide).toBe(1);
    expect(Math.abs(bevelDeg.min) + Math.abs(bevelDeg.max)).toBeLessThan(1e-9);
    expect(step).toBeUndefined();
  });

  // tan(bevel1) = (t2 - t1 cos fold) / (t1 sin fold): of 6 and 10 mm atan(10/6) and atan(6/10); both backs end where the inner planes meet.
  it.each([
    [6, 10, 59.0362434679],
    [10, 6, 30.9637565321],
  ])('%i mm and %i mm meet edge to edge with bevels of their own', async (one, other, bevel) => {
    const outcome = await made(corner, { pieceSettings: [foam(0, one), foam(1, other)] });
    const edges = piecesOf(outcome).map(({ edges: list }) => list.find(({ letter }) => letter === 'A'));
    for (const lean of edges[0]?.bevelDeg ?? []) expect(lean).toBeCloseTo(bevel, 9);
    for (const lean of edges[1]?.bevelDeg ?? []) expect(lean).toBeCloseTo(90 - bevel, 9);
    const sizes = piecesOf(outcome).map(sizesOf);
    [other, one].forEach((setback, i) => {
      expect(sizes[i].face[0]).toBeCloseTo(LENGTH_MM, 9);
      expect(sizes[i].back[0]).toBeCloseTo(LENGTH_MM - setback, 9);
    });
    expectClosed(outcome, 1);
    const [{ sideBevelDeg }] = outcome.seams ?? [];
    expect(sideBevelDeg?.map(({ max }) => max)).toEqual([expect.closeTo(bevel, 9), expect.closeTo(90 - bevel, 9)]);
    // The thin one leans more than a saw table does.
    const [steep, ...others] = outcome.findings.filter(({ code }) => /^foam\/(seam|bevel)/.test(code));
    expect([steep.code, steep.value, others.length]).toEqual([
      'foam/bevel-steep',
      expect.closeTo(Math.max(bevel, 90 - bevel), 9),
      0,
    ]);
  });
});

describe.each([60, 120, -60, -90, -120])('two panels on a fold of %i degrees', (foldDeg) => {
  const corner = panels(LENGTH_MM, WIDTH_MM, rad(foldDeg));
  const off = foldDeg > 0 ? foldDeg - 90 : foldDeg + 90;

  it.each(['face', 'middle', 'back'] as const)('close as a rebate, whatever the sculpt is: %s', async (modelIs) => {
    const outcome = await made(corner, {
      modelIs,
      neutralFraction: 0.35,
      seamSettings: [rebate(corner.seams[0], 0)],
      pieceSettings: [foam(0, 10)],
    });
    expectClosed(outcome, 1);
    for (const { edges } of piecesOf(outcome))
      for (const lean of edges.find(({ letter }) => letter === 'A')?.bevelDeg ?? []) expect(lean).toBeCloseTo(off, 9);
  });

  it('close edge to edge with two thicknesses', async () => {
    expectClosed(await made(corner, { pieceSettings: [foam(0, 10)] }), 1);
  });

  it.each([0, 1])('show an edge of panel %i cut 2 mm short', async (panel) => {
    const outcome = await made(corner, { seamSettings: [rebate(corner.seams[0], 0)], pieceSettings: [foam(0, 10)] });
    const found = await fitOf(outcome, shortened(piecesOf(outcome)[panel], 2));
    expect(found?.worstGapMm).toBeCloseTo(2, 9);
    expect(found?.worstOverlapMm).toBeLessThan(EXACT_MM);
  });
});

/** Volume of a plate whose cuts are planes: its sections are of second order in the depth, and Simpson's rule is exact. */
function volumeOf({ outline, otherOutline, thicknessMm }: FoamPiece): number {
  const middle = outline.map((x, i) => (x + otherOutline[i]) / 2);
  return (thicknessMm * (ringArea(outline) + 4 * ringArea(middle) + ringArea(otherOutline))) / 6;
}

describe('a box of six panels', () => {
  const SIDE_MM = 80;
  const cube = PLATONIC[1];

  /** Which side of the cube a piece is, from the sculpt's corners. */
  async function boxed(change: Partial<ChainInput>): Promise<Outcome> {
    const outcome = await made(cube, change);
    expect(piecesOf(outcome)).toHaveLength(6);
    return outcome;
  }

  it('with rebates fills the space between its outer and its inner walls', async () => {
    const outcome = await boxed({ seamSettings: cube.seams.map((edge) => rebate(edge)) });
    expectClosed(outcome, 12);
    const volume = piecesOf(outcome).reduce((sum, piece) => sum + volumeOf(piece), 0);
    expect(volume).toBeCloseTo(SIDE_MM ** 3 - (SIDE_MM - 12) ** 3, 6);
    // Two of three pairs stand on others: whole, shorter one way, shorter both ways.
    const sizes = piecesOf(outcome).map((piece) => sizesOf(piece).face.map((size) => Math.round(1e6 * size) / 1e6));
    expect(sizes.flat().every((size) => [SIDE_MM, SIDE_MM - 6, SIDE_MM - 12].includes(size))).toBe(true);
    for (const piece of piecesOf(outcome))
      for (const edge of piece.edges) expect(Math.max(...edge.bevelDeg)).toBeLessThan(1e-9);
  });

  const holes = (outcome: Outcome): (readonly [string, number | undefined])[] =>
    outcome.findings.filter(({ code }) => code.startsWith('foam/rebate')).map(({ code, value }) => [code, value]);

  it('tells no hole where one order runs through the pieces of each corner', async () => {
    expect(holes(await boxed({ seamSettings: cube.seams.map((edge) => rebate(edge)) }))).toEqual([]);
    // A lid that runs on past four walls, which meet with bevels.
    const [top] = cube.faces;
    const lid = top.map((v, i) => rebate([v, top[(i + 1) % 4]]));
    const faceAcross = (v: number, w: number): number =>
      cube.faces.findIndex((face, f) => f > 0 && face.includes(v) && face.includes(w));
    const walls = lid.map((setting) => ({ ...setting, standFace: faceAcross(...setting.edge) }));
    const outcome = await boxed({ seamSettings: walls });
    expectClosed(outcome, 12);
    expect(holes(outcome)).toEqual([]);
  });

  it('tells a hole where a rebate ends at bevelled seams, and where three pieces stand on each other in a ring', async () => {
    expect(holes(await boxed({ seamSettings: [rebate(cube.seams[0])] }))).toEqual([['foam/rebate-corner', 2]]);
    // Round one corner each face stands on the next.
    const [corner] = cube.faces[0];
    const round = cube.faces.flatMap((face, f) => (face.includes(corner) ? [f] : []));
    const ring = round.map((f, i) => {
      const next = round[(i + 1) % 3];
      const far = cube.faces[f].find((v) => v !== corner && cube.faces[next].includes(v)) ?? -1;
      return rebate([corner, far], f);
    });
    const others = cube.seams.filter((edge) => !edge.includes(corner)).map((edge) => rebate(edge));
    const outcome = await boxed({ seamSettings: [...ring, ...others] });
    // Every hole is a cube of one thickness.
    const volume = piecesOf(outcome).reduce((sum, piece) => sum + volumeOf(piece), 0);
    const missing = (SIDE_MM ** 3 - (SIDE_MM - 12) ** 3 - volume) / 6 ** 3;
    expect(holes(outcome)).toEqual([['foam/rebate-ring', expect.closeTo(missing, 9)]]);
    expect(Math.round(missing)).toBeGreaterThan(0);
  });

  it('of two thicknesses edge to edge fills it too', async () => {
    const outcome = await boxed({ pieceSettings: [foam(0, 10)] });
    expectClosed(outcome, 12);
    const volume = piecesOf(outcome).reduce((sum, piece) => sum + volumeOf(piece), 0);
    expect(volume).toBeCloseTo(SIDE_MM ** 3 - (SIDE_MM - 12) ** 2 * (SIDE_MM - 16), 6);
  });
});

describe('where a fold is too small to share', () => {
  const pipe = tube(48, 60, 60, () => 100);
  const halves = { ...pipe, seams: [...pipe.seams, [24, 72] as const] };

  it('two thicknesses meet flush on the face, with a step on the back that is told', async () => {
    const outcome = await made(halves, { pieceSettings: [foam(0, 10)] });
    const seams = (outcome.seams ?? []).filter(({ kind }) => kind !== 'open');
    expect(seams).toHaveLength(2);
    for (const { step } of seams) {
      expect(step?.faceMm).toBeCloseTo(0, 9);
      expect(step?.backMm).toBeCloseTo(4, 9);
    }
    for (const { worstStepMm, worstGapMm, worstOverlapMm } of outcome.dryFit?.perSeam ?? []) {
      expect(worstStepMm).toBeCloseTo(4, 1);
      expect(Math.max(worstGapMm, worstOverlapMm)).toBeLessThan(0.1);
    }
    expect(outcome.findings.filter(({ code }) => code === 'foam/seam-step').map(({ severity }) => severity)).toEqual([
      'note',
      'note',
    ]);
  });

  /** Two lengths of pipe on one another, parted all round where they meet. */
  function pipes(sides: number): Solid {
    const corners = [0, 1, 2].flatMap((j) =>
      Array.from({ length: sides }, (_, i): [number, number, number] => {
        const angle = (2 * Math.PI * i) / sides;
        return [60 * Math.cos(angle), 60 * Math.sin(angle), 50 * j];
      }),
    );
    const round = Array.from({ length: sides }, (_, i) => [i, (i + 1) % sides] as const);
    const rings = [0, 1].map((j) =>
      round.map(([i, next]) => [i, next, next + sides, i + sides].map((v) => v + j * sides)),
    );
    return {
      corners,
      faces: rings.flat(),
      seams: [[0, sides], [sides, 2 * sides], ...round.map(([i, next]) => [sides + i, sides + next] as const)],
    };
  }

  // The neutral lines of a ring of 6 and one of 10 mm are rightly of different lengths: 2 pi times 2 mm for a circle.
  it.each(['face', 'middle', 'back'] as const)(
    'rings of two thicknesses meet all round: the sculpt is the %s',
    async (modelIs) => {
      const outcome = await made(pipes(48), { modelIs, pieceSettings: [foam(0, 10)] });
      const seam = outcome.seams?.find(({ step }) => step !== undefined);
      expect(seam?.differenceMm).toBeLessThan(1e-6);
      const [a, b] = seam?.lengthMm ?? [];
      expect(Math.abs(a - b)).toBeCloseTo(modelIs === 'middle' ? 0 : 48 * 2 * 2 * Math.tan(Math.PI / 48), 6);
      const { worstGapMm, worstOverlapMm, worstSlipMm, worstStepMm } =
        outcome.dryFit?.perSeam.find((fit) => fit.seam === seam?.id) ?? {};
      expect(worstStepMm).toBeCloseTo(modelIs === 'middle' ? 2 : 4, 6);
      for (const miss of [worstGapMm, worstOverlapMm]) expect(miss).toBeLessThan(1e-6);
      // Where the seam ends the surface leans along it, as far as the facets tell.
      expect(worstSlipMm).toBeLessThan(0.01);
    },
  );

  it('a rebate cannot be cut and is told so', async () => {
    const outcome = await made(halves, { seamSettings: [rebate([0, 48])] });
    const seam = (outcome.seams ?? []).find(({ kind }) => kind === 'rebate');
    expect(seam).not.toHaveProperty('standSide');
    expect(outcome.findings.filter(({ code }) => code === 'foam/no-rebate').map(({ value }) => value)).toEqual([90]);
  });
});

describe('a lap', () => {
  const corner = panels(LENGTH_MM, WIDTH_MM, rad(10));
  const lap: SeamSetting = { edge: corner.seams[0], kind: 'lap', allowanceMm: 12, lapFace: 1 };

  it.each([
    [false, 1, 10, 6],
    [true, 0, 6, 10],
  ])(
    'under %s: side %i lies on top, a step of its thickness on the face and of the other on the back',
    async (lapUnder, top, faceMm, backMm) => {
      const outcome = await made(corner, { seamSettings: [{ ...lap, lapUnder }], pieceSettings: [foam(1, 10)] });
      const [seam] = outcome.seams ?? [];
      expect([seam.lapSide, seam.topSide]).toEqual([1, top]);
      expect(seam.step).toEqual({ faceMm, backMm });
      const allowances = piecesOf(outcome).map(({ edges }) => edges.find(({ letter }) => letter === 'A')?.allowanceMm);
      expect(allowances).toEqual([0, 12]);
      for (const { edges } of piecesOf(outcome))
        for (const { bevelDeg } of edges) for (const lean of bevelDeg) expect(lean).toBe(0);
    },
  );
});

/** The dry fit of an outcome's only seam with a piece cut otherwise. */
async function fitOf({ cut, layers, pieces, seams, part, sculpt }: Outcome, changed: FoamPiece) {
  if (sculpt === null || cut === null || pieces === null || seams === null) throw new Error('an unfinished outcome');
  const fit = await new DryFits().of(
    {
      cut,
      hinges: layers[0].hinges,
      bends: partBends(sculpt.mesh, cut.patches, cut.chains, part!.pieceSettings, FOAM_RULES),
      pieces: pieces.map((piece) => (piece.id === changed.id ? changed : piece)),
      seams,
      tooMuchPct: 8,
    },
    QUIET_WORK,
  );
  return fit.perSeam.at(0);
}

/** A four-sided piece with its edge of seam A moved in on both skins. */
function shortened(piece: FoamPiece, shortMm: number): FoamPiece {
  const edge = piece.edges.find(({ letter }) => letter === 'A');
  if (edge === undefined) throw new Error('no seam A');
  const movedIn = (ring: Float64Array): Float64Array => {
    const [p, q] = [2 * edge.from, 2 * edge.to];
    const [dx, dy] = [ring[q] - ring[p], ring[q + 1] - ring[p + 1]];
    const scale = shortMm / Math.hypot(dx, dy);
    const moved = ring.slice();
    for (const i of [p, q]) {
      moved[i] -= dy * scale;
      moved[i + 1] += dx * scale;
    }
    return moved;
  };
  return { ...piece, outline: movedIn(piece.outline), otherOutline: movedIn(piece.otherOutline) };
}
