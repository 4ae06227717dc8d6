import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { HomeHand, nestTogether } from '../../src/pipeline/nest-crew.ts';
import { readStripTask } from '../../src/pipeline/nest-instance.ts';
import { nestReport } from '../../src/pipeline/nest-report.ts';
import { stripOutcome } from '../../src/pipeline/nest-strip.ts';
import { expectOk } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { changeJson } from './change-json.ts';

const read = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8');
const SCHEMA = JSON.parse(read('../../shared/nest-layout.schema.json')) as Schema;
const never = (): boolean => false;

describe('the schema of a strip layout', () => {
  it('describes what is written, and refuses what is none', async () => {
    const task = expectOk(readStripTask(read('nesting/albano.json')));
    const { best, moves } = await nestTogether([new HomeHand(task, 1, 0, never)], 0, never, () => undefined);
    const report = JSON.stringify(nestReport(task, stripOutcome(task, best), moves, 1));
    expect(schemaFaults(SCHEMA, JSON.parse(report))).toEqual([]);
    const broken: readonly [string, () => unknown][] = [
      ['schemaVersion', () => 2],
      ['length', () => 0],
      ['density', () => 1.01],
      ['moves', () => 0.5],
      ['places.0.turnDeg', () => 'up'],
      ['places.3.copy', () => -1],
      ['places.5.x', () => undefined],
    ];
    for (const [path, change] of broken)
      expect(schemaFaults(SCHEMA, changeJson(report, path, change)), path).toHaveLength(1);
  });
});
