import { beforeAll, describe, expect, it } from 'vitest';
import { readFileSync } from 'node:fs';
import { QUIET_WORK } from '../../src/base/work.ts';
import { boxOfPoints } from '../../src/geom/ring.ts';
import type { SteepWay } from '../../src/model/steep-join.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import type { Pipeline } from '../../src/pipeline/pipeline.ts';
import { reportOf, svgOf } from '../../src/pipeline/write-files.ts';
import { setThickness } from '../../src/project/commands.ts';
import type { Project } from '../../src/project/project.ts';
import { setSeamJoin } from '../../src/project/seam-commands.ts';
import { panels } from '../reference/handbook/polygon-solids.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { solidProject } from '../support/run-solid.ts';

const SCHEMA = JSON.parse(readFileSync(new URL('../../shared/report.schema.json', import.meta.url), 'utf8')) as Schema;

/** Two panels 214 mm long that fold by 120 degrees, of 10 mm foam: edges that would lean 60. */
const SOLID = panels(120, 214, (120 * Math.PI) / 180);

describe('strips beside the pieces', () => {
  let project: Project;
  let pipeline: Pipeline;
  let copies = 1;
  const outcomeOf = (way: SteepWay): Promise<Outcome> => {
    const [part] = project.parts;
    const several = { ...project, parts: [{ ...part, copies }] };
    const join = setSeamJoin(SOLID.seams, { kind: 'butt', allowanceMm: 0, steep: way });
    return pipeline.run(join.apply(setThickness(10).apply(several)), QUIET_WORK, { date: '2026-01-01' });
  };
  const placed = ({ sheets }: Outcome, id: string): number =>
    (sheets?.sheets ?? []).flatMap(({ placements }) => placements.filter(({ piece }) => piece === id)).length;
  const mapOf = ({ paper }: Outcome): string =>
    (paper?.pages ?? [])
      .filter(({ kind }) => kind === 'map')
      .flatMap(({ drawing }) => drawing.words.map(({ text }) => text))
      .join(' ');

  beforeAll(async () => {
    ({ project, pipeline } = await solidProject(SOLID));
  });

  // Shared over two seams the fold leaves 30 degrees: the strip is 10 mm wide on the back and 10 + 2 · 10 tan 30 on the face.
  it('are cut to share a fold, with a template, a place on a sheet and a line of every list', async () => {
    const outcome = await outcomeOf('split');
    const [strip, ...others] = outcome.strips;
    expect(others).toEqual([]);
    expect(strip).toMatchObject({
      number: 3,
      use: 'between',
      quantity: 1,
      thicknessMm: 10,
      lengthMm: 214,
      letter: 'A',
    });
    expect(strip.bevelDeg).toBeCloseTo(30, 9);
    expect(strip.backMm.max).toBeCloseTo(10, 9);
    expect(strip.faceMm.max).toBeCloseTo(10 + 20 / Math.sqrt(3), 9);
    const template = outcome.templates?.find(({ piece }) => piece === strip.id);
    const [cut, ...bevels] = template?.drawing.strokes ?? [];
    expect([...cut.points]).toEqual([0, 0, 214, 0, 214, strip.faceMm.max, 0, strip.faceMm.max]);
    const edges = bevels.map(({ role, points }) => ({ role, ...boxOfPoints(points) }));
    expect(edges.map(({ role, minY, maxX }) => [role, minY.toFixed(6), maxX])).toEqual([
      ['bevel', (10 / Math.sqrt(3)).toFixed(6), 214],
      ['bevel', (10 + 10 / Math.sqrt(3)).toFixed(6), 214],
    ]);
    const words = template?.drawing.words.map(({ text }) => text);
    expect(words?.slice(0, 4)).toEqual([
      '3  Strip between 1 and 2, seam A',
      expect.stringMatching(/^cut 1 · .*10 mm/),
      '214 mm long, 21.5 mm wide on the face, 10 mm on the back',
      'both long edges 30° in under, traced on the face',
    ]);
    expect(placed(outcome, strip.id)).toBe(1);
    expect(outcome.paper?.blocks.flatMap(({ placements }) => placements.map(({ piece }) => piece))).toContain(strip.id);
    expect(mapOf(outcome)).toContain('Strip between 1 and 2, seam A');
    expect(mapOf(outcome)).toContain('Seams beyond the blade Seam A: a strip of 10 mm foam, 21.5 mm wide on the face');
    expect(svgOf(outcome)).toContain('Strip between 1 and 2');
    const report = JSON.parse(reportOf(outcome)) as { strips: unknown[] };
    expect(schemaFaults(SCHEMA, report)).toEqual([]);
    expect(report.strips).toEqual(JSON.parse(JSON.stringify(outcome.strips)));
  });

  it('lean outward in under where the fold is hollow', async () => {
    const solid = panels(120, 214, (-120 * Math.PI) / 180);
    const hollow = await solidProject(solid, (part) => ({
      ...part,
      seamSettings: [{ edge: solid.seams[0], kind: 'butt', allowanceMm: 0, steep: 'split' }],
    }));
    const { strips } = await hollow.pipeline.run(setThickness(10).apply(hollow.project), QUIET_WORK, {});
    expect(strips[0].bevelDeg).toBeCloseTo(-30, 9);
    expect(strips[0].faceMm.max).toBeCloseTo(10, 9);
    expect(strips[0].areaMm2).toBeCloseTo(214 * (10 + 20 / Math.sqrt(3)), 6);
  });

  // Cut at 45 the gap is 2 (10 / cos 45) sin 15 wide, and a strip over it a thickness wider on either side; of each copy one.
  it('cover a gap, from the thinnest foam in stock and square', async () => {
    copies = 3;
    const outcome = await outcomeOf('trim');
    const [strip] = outcome.strips;
    expect(strip).toMatchObject({ use: 'over', quantity: 3, thicknessMm: 2, bevelDeg: 0, foam: 'eva-2' });
    expect(strip.faceMm.max).toBeCloseTo(20 + 20 * Math.SQRT2 * Math.sin(Math.PI / 12), 9);
    expect(placed(outcome, strip.id)).toBe(3);
    expect(outcome.sheets?.sheets.map(({ foam }) => foam)).toContain('eva-2');
  });

  // Between two cuts of 10 / cos 45 that stand 30 degrees apart: a triangle of half (10 / cos 45)² sin 30, 214 mm long.
  it('are none where the gap is filled, and the map tells with how much', async () => {
    const outcome = await outcomeOf('fill');
    expect(outcome.strips).toEqual([]);
    expect(outcome.templates?.length).toBe(2);
    const cm3 = (0.5 * 200 * 0.5 * 214) / 1000;
    expect(mapOf(outcome)).toContain(
      `Seam A: fill the gap, 7.3 mm wide at the face, 214 mm long, 13.7 mm deep, at most ${Math.ceil(10 * cm3) / 10} cm³ of filling.`,
    );
  });
});
