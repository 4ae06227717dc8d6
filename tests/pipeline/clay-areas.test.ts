import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { foamId } from '../../src/base/ids.ts';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { AreaInClay } from '../../src/model/clay-core.ts';
import { isWhole, shopPlanSteps } from '../../src/pipeline/shop-plan.ts';
import { setClayCore } from '../../src/project/clay-core-commands.ts';
import { addRegion } from '../../src/project/commands.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import type { Solid } from '../reference/handbook/polygon-solids.ts';
import { expectOk } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { block, solidProject, type PartChange } from '../support/run-solid.ts';

const SCHEMA = JSON.parse(readFileSync('shared/project.schema.json', 'utf8')) as Schema;
const CLAY: AreaInClay = { coverMm: 4, foams: [foamId('eva-6')] };
const RADIUS = 40;
const [SIDES, CAP_ROWS, TUBE_ROWS] = [24, 6, 1];

/** An upright tube, open below, closed on top by half a ball; the ball's faces come first. A seam runs down its side from the ball's pole. */
function domed(): Solid {
  const corners: [number, number, number][] = [[0, 0, RADIUS]];
  const rows = [
    ...Array.from({ length: CAP_ROWS }, (_, j): [number, number] => {
      const angle = (Math.PI / 2) * ((j + 1) / CAP_ROWS);
      return [RADIUS * Math.sin(angle), RADIUS * Math.cos(angle)];
    }),
    ...Array.from({ length: TUBE_ROWS }, (_, j): [number, number] => [RADIUS, -40 * (j + 1)]),
  ];
  for (const [r, z] of rows)
    for (let i = 0; i < SIDES; i += 1) {
      const angle = (2 * Math.PI * i) / SIDES;
      corners.push([r * Math.cos(angle), r * Math.sin(angle), z]);
    }
  const at = (row: number, i: number): number => 1 + row * SIDES + (i % SIDES);
  const around = [...Array(SIDES).keys()];
  return {
    corners,
    faces: [
      ...around.map((i) => [0, at(0, i), at(0, i + 1)]),
      ...rows.slice(1).flatMap((_, j) => around.map((i) => [at(j, i), at(j + 1, i), at(j + 1, i + 1), at(j, i + 1)])),
    ],
    seams: [[0, at(0, 0)], ...rows.slice(1).map((_, j): [number, number] => [at(j, 0), at(j + 1, 0)])],
  };
}
const CAP = Array.from({ length: SIDES * CAP_ROWS }, (_, i) => i);

async function inClay(solid: Solid, faces: readonly number[], wish: AreaInClay = CLAY, change?: PartChange) {
  const { project, pipeline } = await solidProject(solid, change);
  const marked = addRegion('Dome', faces, 'normal').apply(project);
  const said = setClayCore(marked.parts[0].regions[0].id, wish).apply(marked);
  return { said, marked, pipeline, outcome: await pipeline.run(said, QUIET_WORK) };
}

/** The model is the back of the wall. */
const onBack: PartChange = (part) => ({ ...part, modelIs: 'back' });
const FOAM_MM = 6;

describe('half a ball on a tube, modelled in clay', async () => {
  const { said, marked, pipeline, outcome } = await inClay(domed(), CAP, CLAY, onBack);
  const [area] = outcome.areasInClay;
  const { figures } = area.made;

  it('leaves the flattening: the tube is one piece with an open rim where the ball stood', () => {
    expect(outcome.stopped).toBeNull();
    expect(outcome.pieces).toHaveLength(1);
    const [piece] = outcome.pieces ?? [];
    const lengths = piece.edges.map(({ stationMm }) => stationMm[stationMm.length - 1]);
    // The wall keeps the length of its neutral surface, facets 3 mm outside the model.
    const apothem = RADIUS * Math.cos(Math.PI / SIDES) + FOAM_MM / 2;
    const around = 2 * SIDES * Math.tan(Math.PI / SIDES) * apothem;
    expect(Math.max(...lengths)).toBeCloseTo(around, 1);
    expect(outcome.cut?.chains.filter(({ kind }) => kind === 'open')).toHaveLength(2);
    expect(outcome.findings.find(({ code }) => code === 'clay/seams-inside')?.value).toBe(CAP_ROWS);
    expect(outcome.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it('has the volume of half a ball, in core and clay', () => {
    // Half a ball: 2/3 π R³ (Bronstein and Semendjajew, Taschenbuch der Mathematik, solids); it goes on with the outside of the wall, 6 mm farther out.
    const ball = (2 / 3) * Math.PI * (RADIUS + FOAM_MM) ** 3;
    expect(figures.solidMm3 / ball).toBeGreaterThan(0.96);
    expect(figures.solidMm3 / ball).toBeLessThan(1);
    expect(figures.clayMm3 + figures.coreMm3).toBeCloseTo(figures.solidMm3, 3);
    expect(figures.leastMm).toBeGreaterThanOrEqual(4 - 1e-3);
    expect(outcome.findings.find(({ code }) => code === 'clay/core')?.value).toBeCloseTo(figures.clayMm3 / 1000, 9);
  });

  it('has its core on sheets and paper, its clay among the quantities, and its steps with their cautions', () => {
    const [core] = outcome.plain;
    expect(core.part.kind).toBe('clay');
    expect(core.pieces.length).toBe(figures.layers);
    const laid = outcome.sheets?.sheets.flatMap(({ placements }) => placements) ?? [];
    for (const { id } of core.pieces) {
      expect(laid.some(({ piece }) => piece === id)).toBe(true);
      expect(outcome.paper?.pages.some(({ pieces }) => pieces.includes(id))).toBe(true);
    }
    expect(core.work?.steps.map(({ work }) => work)).toEqual(expect.arrayContaining(['stack', 'join', 'clay', 'sand']));
    expect(core.work?.steps.find(({ work }) => work === 'sand')?.cautions.length).toBeGreaterThan(0);
    expect(isWhole(outcome)).toBe(true);
    const { finish, cutRows } = runAtOnce(shopPlanSteps(outcome));
    expect(finish.plan.clay?.wetMl).toBeCloseTo(figures.clay.wetMl, 6);
    expect(finish.plan.clay?.items).toMatchObject([
      { what: 'core', name: 'Dome', pieces: outcome.pieces?.map(({ id }) => id) },
    ]);
    expect(finish.plan.steps[0]).toMatchObject({ work: 'clay' });
    expect(cutRows.filter(({ name }) => name.startsWith('Dome'))).toHaveLength(figures.layers);
  });

  it('re-makes nothing when something else changes, and is of foam again when it is taken off', async () => {
    const again = await pipeline.run({ ...said, name: 'other' }, QUIET_WORK);
    expect(again.cut?.patches).toBe(outcome.cut?.patches);
    expect(again.pieces).toBe(outcome.pieces);
    expect(again.plain).toBe(outcome.plain);
    expect(setClayCore(said.parts[0].regions[0].id, null).apply(said)).toEqual(marked);
  });

  it('is kept in the project file', async () => {
    const sources = new Map(said.parts.map(({ source }) => [source.hash, pipeline.sourceOf(source.hash)!]));
    const text = writeProjectFile(said, sources);
    expect(schemaFaults(SCHEMA, JSON.parse(text))).toEqual([]);
    expect(expectOk(await readProjectFile(text, 'dome.json')).project).toEqual(said);
  });
});

describe('an area in clay that cannot be taken out as it is', () => {
  const codes = ({ outcome }: { outcome: Awaited<ReturnType<typeof inClay>>['outcome'] }): string[] =>
    outcome.findings.map(({ code }) => code).filter((code) => code.startsWith('clay/'));

  it('stays in foam where nothing else would be left', async () => {
    const made = await inClay(block([0, 0, 0], [60, 50, 40]), [0, 1, 2, 3, 4, 5]);
    expect(codes(made)).toContain('clay/all');
    expect(made.outcome.pieces).toHaveLength(6);
    expect(made.outcome.plain).toEqual([]);
  });

  it('is told where the foam falls into two parts without it', async () => {
    // A roof of five strips over an open ground: the two in the middle part it from one border to the other.
    const profile = [0, 20, 25, 30, 25, 20, 0];
    const solid: Solid = {
      corners: [0, 60].flatMap((y) => profile.map((z, i): [number, number, number] => [20 * i, y, z])),
      faces: profile.slice(1).map((_, i) => [i, i + 1, i + 8, i + 7]),
      seams: [],
    };
    const made = await inClay(solid, [2, 3]);
    expect(codes(made)).toContain('clay/parts-sculpt');
    expect(made.outcome.pieces).toHaveLength(2);
  });

  it('stays in foam where it ends at two rims', async () => {
    const made = await inClay(block([0, 0, 0], [60, 50, 40]), [2, 3, 4, 5]);
    expect(codes(made)).toEqual(['clay/rims']);
    expect(made.outcome.pieces).toHaveLength(6);
  });
});
