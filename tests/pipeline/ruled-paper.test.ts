import { expect, it } from 'vitest';
import { foamId } from '../../src/base/ids.ts';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { IN_PLACE } from '../../src/geom/matrix4.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { shopPlanSteps } from '../../src/pipeline/shop-plan.ts';
import { emptyProject } from '../../src/project/new-project.ts';
import { addPlain } from '../../src/project/plain-commands.ts';
import type { ShapePart } from '../../src/project/plain-part.ts';
import { setRuled } from '../../src/project/ruled-commands.ts';

const wrapOf = (name: string, length: string): Omit<ShapePart, 'id'> => ({
  kind: 'shape',
  name,
  transform: IN_PLACE,
  copies: 1,
  foams: [foamId('eva-6')],
  shape: 'pipe_wrap',
  sizes: { diameter: '32 mm', length },
});

it('every piece is on paper or told by its figures, and told ones are printed where that is wished', async () => {
  const pipeline = new Pipeline();
  const told = [wrapOf('Shaft', '900 mm'), wrapOf('Grip', '120 mm')].reduce(
    (project, part) => addPlain(part).apply(project),
    emptyProject('staff'),
  );
  const outcome = await pipeline.run(told, QUIET_WORK);
  const onPages = (paper: typeof outcome.paper) => new Set(paper?.pages.flatMap(({ pieces }) => pieces));
  const [shaft, grip] = outcome.plain.map(({ pieces }) => pieces[0]);
  expect([...onPages(outcome.paper)]).toEqual([grip.id]);
  const [strip, ...more] = outcome.paper?.ruled ?? [];
  expect(more).toEqual([]);
  expect(strip.piece).toBe(shaft.id);
  expect(strip.lowerMm).toBeCloseTo(900, 9);
  // Round the pipe on the neutral surface: pi (D + 2 k t), handbook layout of a cylinder.
  expect(strip.widthMm).toBeCloseTo(Math.PI * (32 + 6), 9);
  expect(outcome.sheets?.sheets.flatMap(({ placements }) => placements.map(({ piece }) => piece))).toContain(shaft.id);
  const map = outcome.paper?.pages.filter(({ kind }) => kind === 'map').flatMap(({ drawing }) => drawing.words) ?? [];
  expect(map.map(({ text }) => text).join(' ')).toContain('119.4 mm wide, 900 mm long, ends square');
  const { cutRows, quantities } = runAtOnce(shopPlanSteps(outcome));
  expect(cutRows.map(({ ruled }) => ruled !== undefined)).toEqual([true, false]);
  // Both stand about one axis from the same end: the middle lies there by their masses.
  const [x, y, z] = quantities.centreOfMass ?? [NaN, NaN, NaN];
  expect([x, y].map((mm) => Math.abs(mm) < 0.5)).toEqual([true, true]);
  expect(Math.abs(z)).toBeCloseTo((900 * 450 + 120 * 60) / 1020, 3);

  const printed = await pipeline.run(setRuled('print').apply(told), QUIET_WORK);
  expect(printed.paper?.ruled).toBeUndefined();
  expect(onPages(printed.paper)).toEqual(new Set([shaft.id, grip.id]));
});
