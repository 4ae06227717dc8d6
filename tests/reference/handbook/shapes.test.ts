import { describe, expect, it } from 'vitest';
import { shapeCommand } from '../../../src/cli/shape-command.ts';
import { parseCommand } from '../../../src/cli/args.ts';
import { shapeFrom } from '../../../src/pipeline/shapes.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { faultsOfCase, SHAPE_CASES, SHAPE_OF_CASE, sizesOfCase } from './shape-cases.ts';

/** Every number of the handbook's cases by the shape of that name: through what the product calls, and through the command line. */
describe('worked cases of the handbook as shapes', () => {
  it('are all there', () => expect(SHAPE_CASES.map(({ id }) => id).sort()).toEqual(Object.keys(SHAPE_OF_CASE).sort()));

  it.each(SHAPE_CASES.map((one) => [one.id, one.name, one] as const))('%s: %s', (id, _, one) => {
    const name = SHAPE_OF_CASE[id];
    const { measures } = expectOk(shapeFrom(name, sizesOfCase(one)));
    const figures: Record<string, unknown> = {};
    for (const { name: key, value, of } of measures)
      figures[of ?? key] = of === undefined ? value : { ...(figures[of] ?? {}), [key]: value };
    expect(faultsOfCase(one, figures)).toEqual([]);

    const words = ['shape', name, '--json', ...sizesOfCase(one).map(([size, text]) => `${size}=${text}`)];
    const command = parseCommand(words, '2026-01-01');
    if (command.name !== 'shape') throw new Error(`read as ${command.name}`);
    const told = JSON.parse(shapeCommand(command.choices)) as { measures: Record<string, unknown> };
    expect(faultsOfCase(one, told.measures)).toEqual([]);
  });
});
