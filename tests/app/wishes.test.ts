import { beforeEach, describe, expect, it } from 'vitest';
import {
  areaWords,
  chosenArea,
  giveOf,
  givesOfTriangles,
  nextPanel,
  setChosenGive,
} from '../../src/app/chosen-area.ts';
import { fitFigures } from '../../src/app/fit-figures.ts';
import { areaOf, facesOf, panelsOfPiece } from '../../src/app/panels.ts';
import { edgeWishOf, grainCommands, grainOf, setEdgeWishOf } from '../../src/app/wish-actions.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import type { FoamPiece } from '../../src/model/foam-piece.ts';
import { EMPTY_BENCH } from '../../src/app/bench-state.ts';
import { removeSeamEdges } from '../../src/project/commands.ts';
import { makeWorkbench, openPartedTray, shown } from '../support/tray-workbench.ts';

let workbench: Workbench;
const pieces = (): readonly FoamPiece[] => workbench.bench.pieces?.pieces ?? [];
const choose = (piece: FoamPiece): void =>
  workbench.setView({ choice: { kind: 'piece', piece: piece.id }, place: null });

beforeEach(async () => {
  ({ workbench } = makeWorkbench());
  await openPartedTray(workbench);
});

/** Joins two walls of the tray, so that one piece has a fold. */
async function joinOne(): Promise<FoamPiece> {
  const edges = workbench.part?.seams.edges ?? [];
  workbench.run(removeSeamEdges(edges.slice(0, 1)));
  await shown(workbench);
  const folded = pieces().find(({ patch }) => panelsOfPiece(workbench.bench, patch).length > 1);
  if (folded === undefined) throw new Error('nothing was joined');
  return folded;
}

describe('panels', () => {
  it('end at folds and at seams', async () => {
    for (const { patch } of pieces()) expect(panelsOfPiece(workbench.bench, patch)).toHaveLength(1);
    const { patch } = await joinOne();
    const panels = panelsOfPiece(workbench.bench, patch);
    expect(panels).toHaveLength(2);
    const all = panels.flat().sort((a, b) => a - b);
    expect(all).toEqual([...(workbench.bench.pieces?.patches[patch].meshTriangles ?? [])]);
    const { sculpt } = workbench.bench;
    if (sculpt === null) throw new Error('no sculpt');
    const areas = panels.map((panel) => areaOf(sculpt, panel));
    const whole = areas.reduce((sum, area) => sum + area, 0);
    expect(whole).toBeCloseTo(areaOf(sculpt, all), 6);
    const [one, other] = panels.map((panel) => facesOf(sculpt, panel));
    expect(one.some((face) => other.includes(face))).toBe(false);
  });

  it('are none where nothing is on show', () => {
    expect(panelsOfPiece(EMPTY_BENCH, 0)).toEqual([]);
    expect(fitFigures(EMPTY_BENCH)).toBeNull();
  });
});

describe('an area of the chosen piece', () => {
  it('is none until a place on that piece is meant', () => {
    const [piece, other] = pieces();
    choose(piece);
    expect(chosenArea(workbench.bench, workbench.view)).toBeNull();
    workbench.setView({ place: workbench.bench.pieces?.patches[other.patch].meshTriangles[0] ?? null });
    expect(chosenArea(workbench.bench, workbench.view)).toBeNull();
    setChosenGive(workbench, 'stiff');
    expect(workbench.part?.regions).toEqual([]);
  });

  it('is stepped to panel by panel, and told', async () => {
    const piece = await joinOne();
    choose(piece);
    const steps = [1, 2, 3].map(() => {
      nextPanel(workbench);
      expect(workbench.spoken.trim()).toMatch(/^Panel [12] of 2, /);
      return chosenArea(workbench.bench, workbench.view)?.panel;
    });
    expect(steps).toEqual([0, 1, 0]);
  });

  it('is made stiff, soft, and as the rest again', async () => {
    const piece = await joinOne();
    choose(piece);
    nextPanel(workbench);
    const area = chosenArea(workbench.bench, workbench.view);
    if (area === null) throw new Error('no area');
    const give = () => giveOf(workbench.part?.regions ?? [], area.faces);
    expect(give()).toBe('rest');
    setChosenGive(workbench, 'stiff');
    expect(workbench.part?.regions).toMatchObject([
      { name: `${piece.name}, panel 1`, faces: area.faces, give: 'stiff' },
    ]);
    expect(give()).toBe('stiff');
    setChosenGive(workbench, 'soft');
    expect(give()).toBe('soft');
    expect(areaWords(area, give(), 'mm')).toMatch(/^Panel 1 of 2, \d+\scm²\. Soft, to be warmed\.$/);
    setChosenGive(workbench, 'rest');
    expect(workbench.part?.regions).toEqual([]);
    await shown(workbench);
  });

  it('reaches as far as is asked for, and holds the place in any case', async () => {
    const piece = await joinOne();
    choose(piece);
    nextPanel(workbench);
    const whole = chosenArea(workbench.bench, workbench.view);
    const reach = (withinMm: number) => {
      workbench.setView({ withinMm });
      return chosenArea(workbench.bench, workbench.view)?.areaMm2 ?? 0;
    };
    expect(reach(0.001)).toBeGreaterThan(0);
    expect(reach(0.001)).toBeLessThanOrEqual(whole?.areaMm2 ?? 0);
    expect(reach(10_000)).toBeCloseTo(whole?.areaMm2 ?? 0, 6);
  });
});

describe('areas as the bench is told of them', () => {
  it('are numbers for each triangle, the later area counting', () => {
    const { sculpt } = workbench.bench;
    if (sculpt === null) throw new Error('no sculpt');
    const area = (faces: number[], give: 'stiff' | 'soft') => ({ id: String(faces), name: 'a', faces, give });
    const gives = givesOfTriangles(sculpt, [area([0, 1], 'stiff'), area([1], 'soft')]);
    expect(gives).toHaveLength(sculpt.triangles.length / 3);
    gives.forEach((give, t) => {
      const face = sculpt.faceOfTriangle[t];
      expect(give).toBe(face === 0 ? 1 : face === 1 ? 2 : 0);
    });
    expect(givesOfTriangles(null, [])).toHaveLength(0);
  });
});

describe('wishes for edges and grain', () => {
  it('hold for the whole edge, and are found again', () => {
    const open = workbench.bench.seams?.chains.find(({ kind }) => kind === 'open');
    if (open === undefined) throw new Error('the tray is open');
    const wish = () => edgeWishOf(workbench.bench, workbench.part, open.id);
    expect(wish()).toEqual({});
    setEdgeWishOf(workbench, open.id, { holdLength: true });
    setEdgeWishOf(workbench, open.id, { straight: true });
    expect(wish()).toEqual({ holdLength: true, straight: true });
    expect(workbench.part?.edgeWishes).toHaveLength(1);
    setEdgeWishOf(workbench, open.id, { holdLength: false, straight: false });
    expect(workbench.part?.edgeWishes).toEqual([]);
  });

  it('lay the mirrored grain on a twin, and undo as one', async () => {
    const piece = pieces().find(({ twinOf }) => twinOf !== undefined);
    if (piece === undefined) throw new Error('the tray has twins');
    const twin = pieces().find(({ id }) => id === piece.twinOf);
    for (const command of grainCommands(workbench.bench, piece, { angleDeg: 25, stretch: 'across' }))
      workbench.run(command);
    await shown(workbench);
    const grains = [piece, twin].map((one) => one && grainOf(workbench.bench, workbench.part, one));
    expect(grains).toEqual([
      { angleDeg: 25, stretch: 'across' },
      { angleDeg: -25, stretch: 'across' },
    ]);
    expect(pieces().find(({ id }) => id === piece.id)?.twinOf).toBe(twin?.id);
    workbench.undo();
    expect(workbench.part?.pieceSettings).toEqual([]);
  });
});
