import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { COATINGS } from '../../src/model/coatings.ts';
import type { FinishPlan } from '../../src/model/finish.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { namesOfOrder } from '../../src/pipeline/shop-order.ts';
import { shopPlanSteps, type ShopPlan } from '../../src/pipeline/shop-plan.ts';
import { addRegion, raiseRegion, type Command } from '../../src/project/commands.ts';
import {
  addColour,
  clayRegion,
  colourRegion,
  newColour,
  paintFaces,
  setBaseColour,
  setColour,
  setFillet,
} from '../../src/project/finish-commands.ts';
import { setCoatings } from '../../src/project/shop-commands.ts';
import { TRAY, tube, type Solid } from '../reference/handbook/polygon-solids.ts';
import { surfaceArea } from '../../src/mesh/measure.ts';
import { outcomeWith } from '../support/outcome-with.ts';
import { outcomeOf, solidProject } from '../support/run-solid.ts';

/** The plan of an outcome after commands that change nothing of the foam. */
function planAfter(outcome: Outcome, ...commands: readonly Command[]): ShopPlan {
  const project = commands.reduce((changed, command) => command.apply(changed), outcome.project);
  return runAtOnce(shopPlanSteps(outcomeWith(outcome, project)));
}

const finishOf = (outcome: Outcome, ...commands: readonly Command[]): FinishPlan =>
  planAfter(outcome, ...commands).finish.plan;

const BLACK = addColour(newColour('Lamp black', '#1d1d1f'));
const BRASS = addColour(newColour('Brass', '#b58a3c'));
const ALL_BLACK = [BLACK, BRASS, setBaseColour('colour-1')];

/** A floor and a wall that stands at its back edge, 80 mm long: their outsides face each other. */
const CORNER: Solid = {
  corners: [
    [0, 0, 0],
    [80, 0, 0],
    [80, 60, 0],
    [0, 60, 0],
    [0, 60, 50],
    [80, 60, 50],
  ],
  faces: [
    [0, 1, 2, 3],
    [3, 2, 5, 4],
  ],
  seams: [[2, 3]],
};

describe('the area that is painted', () => {
  it('is that of the face of the finished foam round a cylinder, not of the sculpt', async () => {
    const [sides, radius, height, thickness] = [24, 40, 90, 10];
    const outcome = await outcomeOf(
      tube(sides, radius, radius, () => height),
      (part) => ({
        ...part,
        modelIs: 'back',
        layers: [{ ...part.layers[0], thicknessMm: thickness }],
      }),
    );
    const turn = Math.PI / sides;
    // Each flat side moves out by the thickness.
    const face = 2 * sides * (radius * Math.cos(turn) + thickness) * Math.tan(turn) * height;
    const half = [...Array(sides / 2).keys()];
    const plan = finishOf(
      outcome,
      ...ALL_BLACK,
      paintFaces('Half', half, 'colour-2'),
      setColour('colour-2', { coats: 3 }),
    );
    expect(plan.outsideMm2).toBeCloseTo(face, 4);
    const [black, brass] = plan.colours;
    for (const { areaMm2 } of plan.colours) expect(areaMm2).toBeCloseTo(face / 2, 4);
    // Usual figures: 10 m² a litre.
    expect(black.ml).toBeCloseTo(((face / 2 / 1e6) * 2 * 1000) / 10, 8);
    expect(brass.ml).toBeCloseTo(((face / 2 / 1e6) * 3 * 1000) / 10, 8);
    // One piece, closed along its seam: two borders along the tube, one of them on the seam.
    expect(plan.tapeMm).toBeCloseTo(2 * height, 4);
  });

  it('is that of the larger ball outside a ball', async () => {
    const [bands, sectors, radius, thickness] = [6, 8, 50, 6];
    const ring = (i: number): number => 1 + (i - 1) * sectors;
    const at = (i: number, j: number): number => (i === 0 ? 0 : i === bands ? ring(bands) : ring(i) + (j % sectors));
    const place = (i: number, j: number) => {
      const [polar, turn] = [(Math.PI * i) / bands, (2 * Math.PI * j) / sectors];
      return [
        radius * Math.sin(polar) * Math.cos(turn),
        radius * Math.sin(polar) * Math.sin(turn),
        radius * Math.cos(polar),
      ] as const;
    };
    const inner = Array.from({ length: bands - 1 }, (_, i) =>
      Array.from({ length: sectors }, (_, j) => place(i + 1, j)),
    ).flat();
    const gores = Array.from({ length: bands * sectors }, (_, n) => [Math.floor(n / sectors), n % sectors]);
    const ball: Solid = {
      corners: [[0, 0, radius], ...inner, [0, 0, -radius]],
      faces: gores.map(([i, j]) => [...new Set([at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)])]),
      seams: gores.filter(([, j]) => j % 2 === 0).map(([i, j]) => [at(i, j), at(i + 1, j)]),
    };
    const outcome = await outcomeOf(ball, (part) => ({
      ...part,
      modelIs: 'back',
      layers: [{ ...part.layers[0], thicknessMm: thickness }],
    }));
    const plan = finishOf(outcome, BLACK, setBaseColour('colour-1'));
    // Flat faces between 6 bands and 8 sectors fall short of the ball by as much, inside and out.
    const { positions, triangles } = outcome.sculpt?.mesh ?? expect.fail();
    const sculpt = surfaceArea(positions, triangles);
    expect(Math.sqrt(sculpt / (4 * Math.PI * radius ** 2))).toBeGreaterThan(0.94);
    expect(Math.abs(Math.sqrt(plan.outsideMm2 / sculpt) - (radius + thickness) / radius)).toBeLessThan(0.015);
  });
});

describe('a sheet that is laid on the face', () => {
  it('is painted in place of what it covers, and before it is laid where its colour is its own', async () => {
    const marked = addRegion('Lid', [0], 'normal').apply((await solidProject(TRAY)).project);
    const thin = marked.foams.find(({ thicknessMm }) => thicknessMm < 6) ?? expect.fail();
    const outcome = await outcomeOf(TRAY, () => raiseRegion('area-1', thin).apply(marked).parts[0]);
    expect(outcome.raised).toHaveLength(1);
    const { finish, gluing } = planAfter(outcome, ...ALL_BLACK, colourRegion('area-1', 'colour-2'));
    const [black, brass] = finish.plan.colours;
    // Where planes meet it is moved with both: 2 mm farther out the lid is 104 mm wide.
    const lid = (100 + 2 * thin.thicknessMm) ** 2;
    expect(finish.plan.outsideMm2).toBeCloseTo(4e4 + lid, 6);
    expect(black.areaMm2).toBeCloseTo(4e4, 6);
    expect(brass.areaMm2).toBeCloseTo(lid, 6);
    const laid = outcome.raised[0].pieces?.[0].id;
    expect(brass.pieces.map(({ piece }) => piece)).toEqual([laid]);
    const early = finish.plan.steps.filter(({ beforeStep }) => beforeStep !== null);
    expect(early.map(({ work, pieces }) => [work, pieces])).toEqual([
      ['seal', [laid]],
      ['colour', [laid]],
    ]);
    expect(gluing.steps[(early[0].beforeStep ?? 0) - 1]).toMatchObject({ work: 'lay', adds: { pieces: [laid] } });
    // All round its border the black beside it is painted later, against tape.
    expect(finish.plan.steps.at(-1)).toMatchObject({ name: 'Lamp black', tapeOn: ['Brass'] });
    expect(finish.plan.steps.at(-1)?.tapeMm).toBeCloseTo(4 * Math.sqrt(lid), 6);
  });
});

describe('the order of finishing', () => {
  it('paints a lid of its own colour before it is glued on, and tapes it where it will be glued', async () => {
    const outcome = await outcomeOf(TRAY);
    const { gluing, finish } = planAfter(outcome, ...ALL_BLACK, paintFaces('Lid', [0], 'colour-2'));
    const { steps, colours, outsideMm2 } = finish.plan;
    const early = steps.filter(({ beforeStep }) => beforeStep !== null);
    const lid = finish.plan.colours[1].pieces[0].piece;
    expect(early.map(({ work, name }) => [work, name])).toEqual([
      ['bare', ''],
      ['seal', COATINGS[0].name],
      ['colour', 'Brass'],
    ]);
    for (const { pieces, why } of early) expect([pieces, why]).toEqual([[lid], 'apart']);
    const first = gluing.steps.find(({ adds, onto }) => [adds, onto].some((body) => body?.pieces.includes(lid)));
    expect(early[0].beforeStep).toBe(first?.number);
    const joins = (outcome.seams ?? []).filter(({ kind, pieces }) => kind !== 'open' && pieces.includes(lid));
    expect(early[0].tapeMm).toBeCloseTo(
      joins.reduce((sum, { trueLengthMm }) => sum + trueLengthMm, 0),
      6,
    );
    // The rest: sealed and painted round a lid that is done, so taped along its four edges on the face.
    const late = steps.filter(({ beforeStep }) => beforeStep === null);
    expect(late.map(({ work, tapeMm, tapeOn }) => [work, Math.round(tapeMm), tapeOn])).toEqual([
      ['seal', 0, []],
      ['colour', 400, ['Brass']],
    ]);
    expect(outsideMm2).toBeCloseTo(5e4, 6);
    expect(colours.map(({ areaMm2 }) => Math.round(areaMm2))).toEqual([40_000, 10_000]);
  });

  it('puts nothing on twice: sealed over all, each place in one colour, paint all over only where it is wanted', async () => {
    const outcome = await outcomeOf(TRAY);
    const paint = [paintFaces('Lid', [0], 'colour-2')];
    const plan = planAfter(outcome, ...ALL_BLACK, ...paint);
    const sum = (work: string): number =>
      plan.finish.plan.steps.reduce((total, step) => total + (step.work === work ? step.areaMm2 : 0), 0);
    expect(sum('seal')).toBeCloseTo(5e4, 6);
    expect(sum('colour')).toBeCloseTo(5e4, 6);
    expect(sum('paint')).toBe(0);
    expect(plan.quantities.coatings.map(({ coating }) => coating.use)).toEqual(['seal']);
    const sealed = plan.finish.plan.steps.filter(({ work }) => work === 'seal').reduce((ml, step) => ml + step.ml, 0);
    expect(plan.quantities.coatings[0].ml).toBeCloseTo(sealed, 8);
    expect(plan.findings).toEqual([]);
    // Without a base the rest keeps the paint that goes all over.
    const rest = planAfter(outcome, BLACK, BRASS, ...paint);
    expect(rest.quantities.coatings.map(({ coating }) => coating.use)).toEqual(['seal', 'paint']);
    expect(rest.finish.plan.colours.map(({ areaMm2 }) => Math.round(areaMm2))).toEqual([10_000]);
    // Whatever their order in the list: seal, prime, colours, and clear over them.
    const named = (...ids: readonly string[]) =>
      ids.flatMap((id) => COATINGS.find((coating) => coating.id === id) ?? []);
    const { steps } = finishOf(outcome, ...ALL_BLACK, setCoatings(named('clear', 'primer', 'sealer')));
    expect(steps.map(({ work }) => work)).toEqual(['seal', 'prime', 'colour', 'clear']);
    const both = planAfter(outcome, ...ALL_BLACK, setCoatings([COATINGS[0], COATINGS[1]]));
    expect(both.findings.map(({ code }) => code)).toEqual(['finish/painted-twice']);
  });

  it('says each caution only beside the steps that need it', async () => {
    const outcome = await outcomeOf(TRAY);
    const sprayed = setColour('colour-2', { cautions: ['paint'] });
    const shape = [paintFaces('Lid', [0], 'colour-2'), clayRegion('area-1', 5)];
    const { steps } = finishOf(outcome, ...ALL_BLACK, sprayed, ...shape);
    const told = steps
      .filter(({ cautions }) => cautions.length > 0)
      .map(({ work, name, cautions }) => [work, name, cautions]);
    expect(told).toEqual([
      ['clay', 'air-drying foam clay', ['dust']],
      ['colour', 'Brass', ['paint']],
    ]);
  });

  it('waits for every coat, and for paint to be hard before it is taped', async () => {
    const outcome = await outcomeOf(TRAY);
    const { steps, waitMin } = finishOf(outcome, ...ALL_BLACK);
    // Sealed three times with an hour after each; two coats an hour apart and four hours until it can be handled.
    expect(steps.map(({ work, waitMin: own }) => [work, own])).toEqual([
      ['seal', 180],
      ['colour', 60 + 240],
    ]);
    expect(waitMin).toBe(480);
  });
});

describe('clay', () => {
  it('fills a right corner by what a quarter circle leaves, dries before anything is coated, and keeps both sides unpainted until then', async () => {
    const outcome = await outcomeOf(CORNER);
    const [wall] = outcome.layers;
    const seam = (wall.cut?.chains ?? []).findIndex(({ kind }) => kind !== 'open');
    const [name] = namesOfOrder(wall, [seam]);
    const paint = [...ALL_BLACK, paintFaces('Floor', [0], 'colour-2')];
    expect(finishOf(outcome, ...paint).steps.some(({ beforeStep }) => beforeStep !== null)).toBe(true);
    const { clay, steps } = finishOf(outcome, ...paint, setFillet(name, 20));
    const [item] = clay?.items ?? [];
    expect(item).toMatchObject({ what: 'fillet', name: 'A', sizeMm: 20, lengthMm: 80 });
    expect(item.ml).toBeCloseTo((80 * 400 * (1 - Math.PI / 4)) / 1000, 9);
    // 20 mm leave 8.28 mm in the corner: two layers of 6.35 mm, four days.
    expect(item.deepestMm).toBeCloseTo(20 * (Math.SQRT2 - 1), 9);
    expect([item.layers, clay?.days]).toEqual([2, 4]);
    expect(clay?.wetMl).toBeCloseTo(item.ml / 0.98 ** 3, 9);
    expect(steps.map(({ work, beforeStep }) => [work, beforeStep])).toEqual([
      ['clay', null],
      ['seal', null],
      ['colour', null],
      ['colour', null],
    ]);
  });

  it('is told where it has no place', async () => {
    const outcome = await outcomeOf(TRAY);
    const [wall] = outcome.layers;
    const [name] = namesOfOrder(wall, [(wall.cut?.chains ?? []).findIndex(({ kind }) => kind !== 'open')]);
    const codes = (...commands: readonly Command[]) => planAfter(outcome, ...commands).findings.map(({ code }) => code);
    expect(codes(setFillet(name, 5))).toEqual(['finish/fillet-none']);
    expect(codes(setFillet({ ...name, nth: 7 }, 5))).toEqual(['finish/fillet-lost']);
  });

  it('stands on a flat face as high as it is', async () => {
    const outcome = await outcomeOf(CORNER);
    const { clay } = finishOf(outcome, BLACK, paintFaces('Floor', [0], 'colour-1'), clayRegion('area-1', 9));
    const [item] = clay?.items ?? [];
    expect(item.areaMm2).toBeCloseTo(4800, 6);
    expect(item.layers).toBe(2);
    // Its back edge runs into the wall, whose face moves out as much: the floor's share ends half-way between them.
    expect(item.ml).toBeCloseTo((80 * (60 * 9 - 9 ** 2 / 2)) / 1000, 6);
  });
});
