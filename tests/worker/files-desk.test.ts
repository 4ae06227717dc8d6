import { unzipSync } from 'fflate';
import { expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { openFile } from '../../src/app/opening.ts';
import { documentOf } from '../../src/project/kept-version.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import type { FilesAsk } from '../../src/worker/files-api.ts';
import { expectOk } from '../support/expect-ok.ts';
import { makeWorkbench, openPartedTray, shown } from '../support/tray-workbench.ts';
import { TRAY_OBJ } from '../browser/open-tray.ts';

/** One of each kind that is soon made. */
const EVERYTHING: FilesAsk = {
  paper: ['pieces', 'report', 'project'],
  sheetSvg: true,
  dxf: true,
  pngDpi: null,
  stl: false,
  obj: false,
  timesSmaller: null,
};
const DAY = '2030-01-01';
const PROJECT = 'project.foamloft.json';

it('everything in one zip holds the job with its sources by their hashes, and opens again to the same bytes', async () => {
  const { workbench } = makeWorkbench();
  await openPartedTray(workbench);
  const made = await workbench.workshop.makeFiles(EVERYTHING, workbench.project!, DAY, () => undefined);
  if (made === null) throw new Error('called off');
  const zip = new Uint8Array(await expectOk(made).file.blob.arrayBuffer());
  const held = unzipSync(zip);
  expect(Object.keys(held)).toEqual(expect.arrayContaining([PROJECT, 'report.json']));
  const read = expectOk(await readProjectFile(new TextDecoder().decode(held[PROJECT]), PROJECT));
  expect(read.project).toEqual(documentOf(workbench.project!));
  const [[hash, { bytes }], ...others] = read.sources;
  expect(others).toEqual([]);
  expect([new TextDecoder().decode(bytes), hash]).toEqual([TRAY_OBJ, await contentHash(bytes)]);

  const { workbench: again } = makeWorkbench();
  await openFile(again, new File([zip], 'tray.zip'));
  await shown(again);
  expect(again.project).toEqual(workbench.project);
  // Saved, it would not be written over the zip.
  expect(again.keeping.place.file).toBeNull();
  const saved = expectOk(await again.workshop.makeFile('project', again.project!, DAY));
  expect(new TextDecoder().decode(saved.bytes)).toBe(writeProjectFile(read.project, read.sources));
  expect(JSON.parse(new TextDecoder().decode(saved.bytes))).toEqual(
    JSON.parse(new TextDecoder().decode(held[PROJECT])),
  );
});

it('a zip without a job, or a damaged one, is refused in a sentence and the job in hand stays', async () => {
  const { workbench } = makeWorkbench();
  await openPartedTray(workbench);
  const before = workbench.project;
  await openFile(workbench, new File([new Uint8Array([0x50, 0x4b, 3, 4, 0, 0])], 'torn.zip'));
  expect(workbench.notice?.text).toMatch(/^torn\.zip is damaged or holds no Foamloft project: choose /);
  expect(workbench.project).toBe(before);
});
