import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { recompute } from './recompute.mjs';
import type { Report } from './report-shape.ts';

const SCHEMA = JSON.parse(readFileSync(new URL('../../shared/report.schema.json', import.meta.url), 'utf8')) as Schema;

/** Shop rule for seams: sides that differ by more than the larger of these are told (mm, share of the length). */
const DIFFERENCE_MM = 0.5;
const DIFFERENCE_SHARE = 0.0025;

/**
 * What every report must be: as its schema says, recomputed from the model without a difference, no triangle flipped, pieces that lie on themselves and
 * seams that do not fit each other told in so many words.
 */
export function expectHonest(modelBytes: Uint8Array, report: Report): void {
  expect(schemaFaults(SCHEMA, report).slice(0, 10)).toEqual([]);
  expect(recompute(modelBytes, report).faults.slice(0, 10)).toEqual([]);
  expect(report.pieces.filter((piece) => piece.flipped > 0).map((piece) => piece.name)).toEqual([]);
  const told = (code: string, key: 'piece' | 'seam'): (string | null)[] =>
    report.findings.filter((finding) => finding.code === code).map((finding) => finding.where[key]);
  const overlapping = report.pieces.filter((piece) => piece.overlaps > 0).map((piece) => piece.id);
  expect(told('foam/overlap', 'piece').sort()).toEqual(overlapping.sort());
  const unlike = report.seams.filter(
    ({ differenceMm, lengthMm }) => differenceMm > Math.max(DIFFERENCE_MM, DIFFERENCE_SHARE * Math.max(...lengthMm)),
  );
  expect(told('foam/seam-difference', 'seam').sort()).toEqual(unlike.map((seam) => seam.id).sort());
}
