#!/usr/bin/env node
/**
 * Recomputes a report from the model it was made of, without a line of the product: stretch and squash of every triangle, areas, lengths,
 * flips, overlaps, rings, and the walk along both sides of every seam.
 *
 *   node tests/reference/recompute.mjs MODEL report.json
 *
 * Prints the largest differences. Exit 0: everything agrees; 1: something does not, one line each; 2: wrong usage.
 */
import { readFileSync, realpathSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { checkCoverage, checkModelFacts, checkNeutral, sizedModel } from './recompute/check-model.mjs';
import { checkPiece } from './recompute/check-piece.mjs';
import { checkSeams } from './recompute/check-seams.mjs';
import { Ledger } from './recompute/ledger.mjs';
import { readModelFile } from './recompute/read-model.mjs';
import { checkTwins } from './recompute/check-twins.mjs';

/** Agreement asked of every figure, relative; stretch and squash as length ratios. */
const TOLERANCE = 1e-6;

/** Place of the model in the foam, counted from the back as a share of the thickness. */
const MODEL_PLACE = { back: 0, middle: 0.5, face: 1 };

/**
 * @param {Uint8Array} modelBytes the model's file
 * @param report                  the parsed report.json
 * @returns {{ faults: string[], worst: Record<string, number>, checks: number, triangles: number, heldPlanes: number }}
 */
export function recompute(modelBytes, report) {
  const ledger = new Ledger();
  const model = sizedModel(readModelFile(modelBytes), report.scaleMmPerUnit);
  checkModelFacts(model, report.model, ledger);
  const wallMm = report.layers.reduce((sum, layer) => sum + layer.thicknessMm, 0);
  const place = MODEL_PLACE[report.layers[0].modelIs];
  const modelPlace = report.layers.length === 1 ? place : 0;
  let backMm = (report.parts[0].offMm ?? 0) - place * wallMm;
  let heldPlanes = 0;
  // Sheets of the wall lie on each other from the back outward.
  for (const layer of report.layers) {
    const pieces = report.pieces.filter((piece) => piece.layer === layer.id);
    checkCoverage(model, pieces, ledger);
    ledger.agree('backMm', `layer ${layer.id}.backMm`, layer.backMm, backMm, 1e-9);
    heldPlanes += checkNeutral(model, pieces, { ...layer, backMm, modelPlace }, ledger);
    backMm += layer.thicknessMm;
  }
  const rings = report.pieces.map((piece) => checkPiece(piece, TOLERANCE, ledger));
  checkSeams(report, rings, TOLERANCE, ledger);
  checkTwins(report, ledger);
  const triangles = report.pieces.reduce((sum, piece) => sum + piece.flat.triangles.length, 0);
  return { faults: ledger.faults, worst: ledger.worst, checks: ledger.checks, triangles, heldPlanes };
}

function main(words) {
  if (words.length !== 2) {
    process.stderr.write('usage: node tests/reference/recompute.mjs MODEL report.json\n');
    return 2;
  }
  const result = recompute(readFileSync(words[0]), JSON.parse(readFileSync(words[1], 'utf8')));
  for (const fault of result.faults) process.stderr.write(`${fault}\n`);
  const worst = Object.entries(result.worst).map(([kind, miss]) => `${kind} ${miss.toExponential(1)}`);
  process.stdout.write(
    `${result.triangles} triangles, ${result.checks} figures, ${result.faults.length} disagree; largest differences: ${worst.join(', ')}\n`,
  );
  return result.faults.length === 0 ? 0 : 1;
}

const started = process.argv[1];
if (started !== undefined && realpathSync(started) === fileURLToPath(import.meta.url)) {
  process.exitCode = main(process.argv.slice(2));
}
