import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { kindJson, shapeJson } from '../../src/pipeline/shape-json.ts';
import { ALL_SHAPES, shapeFrom } from '../../src/pipeline/shapes.ts';
import { expectOk } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { changeJson } from '../reference/change-json.ts';

const SCHEMA = JSON.parse(readFileSync(new URL('../../shared/shape.schema.json', import.meta.url), 'utf8')) as Schema;

const written = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

/** Held against the one definition it must fit, so that a fault is told by its own place. */
const faultsOf = (name: 'shape' | 'kind', value: unknown): string[] =>
  schemaFaults({ $defs: SCHEMA.$defs, $ref: `#/$defs/${name}` }, value);

describe('the schema of shapes', () => {
  it('holds for every shape at its usual sizes and for the list of all', () => {
    for (const kind of ALL_SHAPES) {
      expect(faultsOf('kind', written(kindJson(kind))), kind.name).toEqual([]);
      const made = written(shapeJson(expectOk(shapeFrom(kind.name, [])), kind));
      expect(faultsOf('shape', made), kind.name).toEqual([]);
    }
    expect(schemaFaults(SCHEMA, written(ALL_SHAPES.map(kindJson)))).toEqual([]);
  });

  it.each<[string, string, (old: unknown) => unknown]>([
    ['a piece without an area', 'pieces.0.areaMm2', () => undefined],
    ['an arc without its centre', 'pieces.0.outline.0.segments.0.centre', () => undefined],
    ['a figure that became null', 'measures.slant', () => null],
    ['a seam of one piece', 'seams.0.pieces', () => ['frustum']],
    ['a name that is not known', 'pieces.0', (old) => ({ ...(old as object), colour: 'red' })],
    ['a size that is no figure', 'sizes.height', () => [null]],
    ['another version', 'schemaVersion', () => 2],
  ])('refuses a shape with %s', (_, path, change) => {
    const kind = ALL_SHAPES.find(({ name }) => name === 'frustum');
    if (kind === undefined) throw new Error('no frustum');
    const made = written(shapeJson(expectOk(shapeFrom('frustum', [])), kind));
    expect(schemaFaults(SCHEMA, made)).toEqual([]);
    expect(schemaFaults(SCHEMA, changeJson(JSON.stringify(made), path, change))).not.toEqual([]);
  });
});
