/** Writes the seam files of the test models anew: node scripts/run-ts.mjs tests/reference/seams/write-seams.ts */
import { readFileSync, writeFileSync } from 'node:fs';
import { chooseSeams } from './choose-seams.ts';
import { seamFileText } from './seam-file-text.ts';
import { surfaceFromObj } from './surface.ts';
import { REAL_MODELS, SHAPES } from './test-models.ts';

for (const { modelFile, seamFile, choice } of [...REAL_MODELS, ...SHAPES]) {
  const surface = surfaceFromObj(readFileSync(`tests/reference/${modelFile}`, 'utf8'));
  writeFileSync(`tests/reference/${seamFile}`, seamFileText(chooseSeams(surface, choice)));
}
