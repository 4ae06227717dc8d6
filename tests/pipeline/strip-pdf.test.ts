import { expect, it } from 'vitest';
import { foamId } from '../../src/base/ids.ts';
import { stripPdfOf } from '../../src/pipeline/write-files.ts';
import { setFoam } from '../../src/project/commands.ts';
import { addLayer } from '../../src/project/layer-commands.ts';
import { newProject } from '../../src/project/new-project.ts';
import { expectOk } from '../support/expect-ok.ts';
import { readPdf } from '../support/read-pdf.ts';
import { testFont } from '../support/run-sample.ts';

it('draws a test strip for every foam of the wall, the outermost first', async () => {
  const bare = newProject('Wall', { hash: '0'.repeat(64), fileName: 'none', format: 'obj' });
  const inner = setFoam(foamId('eva-10'), 10).apply(bare);
  const two = addLayer('outside').apply(addLayer('outside').apply(inner));
  const outermost = two.parts[0].layers[2].id;
  const wall = setFoam(foamId('eva-2'), 2, outermost).apply(two);
  const pdf = expectOk(await stripPdfOf(wall, { font: testFont(), date: '2026-03-01' }));
  const { pages } = await readPdf(pdf);
  const titles = pages.map(({ texts }) => texts.map(({ text }) => text).find((text) => text.startsWith('Test strip:')));
  expect(titles).toEqual([expect.stringContaining('2 mm'), expect.stringContaining('10 mm')]);
});
