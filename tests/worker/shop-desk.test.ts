import { unzipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { isUnfinished } from '../../src/app/gluing-look.ts';
import { setScale } from '../../src/project/commands.ts';
import { setBridges, setCutter } from '../../src/project/cutter-commands.ts';
import type { Project } from '../../src/project/project.ts';
import { movedInOrder } from '../../src/project/shop-commands.ts';
import type { FilesAsk } from '../../src/worker/files-api.ts';
import { PipelineWorkshop } from '../../src/worker/workshop.ts';
import { expectOk } from '../support/expect-ok.ts';
import { sampleProject, testFont } from '../support/run-sample.ts';
import { makeWorkbench, openObj, shown } from '../support/tray-workbench.ts';

const NOTHING: FilesAsk = {
  paper: [],
  sheetSvg: false,
  dxf: false,
  pngDpi: null,
  stl: false,
  obj: false,
  timesSmaller: null,
};

let workshop: PipelineWorkshop;
let project: Project;
const quiet = (): void => undefined;

beforeAll(async () => {
  const sample = await sampleProject('maul-head');
  ({ project } = sample);
  workshop = new PipelineWorkshop(() => Promise.resolve(testFont()));
  const { hash, fileName } = project.parts[0].source;
  expectOk(await workshop.putSource(sample.pipeline.sourceOf(hash)!.bytes, fileName));
});

describe('the work at the bench', () => {
  it('is nothing before there is a result', async () => {
    expect(await workshop.shop()).toBeNull();
    expect(await workshop.stepPicture(1)).toBeNull();
    expect(await workshop.tryGluing([])).toBeNull();
  });

  it('is told in the words of the build sheet, with a picture of every step', async () => {
    await workshop.compute(structuredClone(project), 0, quiet);
    const shop = (await workshop.shop())!;
    expect(shop.steps).toHaveLength(shop.gluing.steps.length);
    expect(shop.batches).toHaveLength(shop.gluing.batches.length);
    expect(shop.steps[0].runs[0]).toMatch(/^Seam \w+, .*Touch first/);
    expect(shop.order).toHaveLength(18);
    const picture = (await workshop.stepPicture(shop.steps.length))!;
    expect(picture.drawing.strokes.length).toBeGreaterThan(4);
    expect(await workshop.stepPicture(shop.steps.length + 1)).toBeNull();
  });

  it('says why an order cannot be, and nothing of one that can', async () => {
    const { order } = (await workshop.shop())!;
    const names = order.map(({ name }) => name);
    expect(await workshop.tryGluing(names)).toEqual([]);
    const why = (await workshop.tryGluing(movedInOrder(names, 3, names.length - 1)))!;
    expect(why.map(({ code }) => code)).toEqual(['shop/order-shut']);
    expect(order.some(({ seam }) => seam === why[0].where.seam)).toBe(true);
  });

  it('is given up when something was changed', async () => {
    await workshop.compute(structuredClone({ ...project, name: 'other' }), 0, quiet);
    const late = workshop.shop();
    const reply = workshop.compute(structuredClone(project), 0, quiet);
    expect(await late).toBeNull();
    await reply;
    expect(await workshop.shop()).not.toBeNull();
  });
});

it('nothing is told of a body that cannot be laid flat, and no file is made of it', async () => {
  const { workbench } = makeWorkbench();
  const corners = [0, 1].flatMap((z) => [
    [0, 0, z],
    [9, 0, z],
    [9, 9, z],
    [0, 9, z],
  ]);
  const faces = [
    [4, 3, 2, 1],
    [5, 6, 7, 8],
    [1, 2, 6, 5],
    [2, 3, 7, 6],
    [3, 4, 8, 7],
    [4, 1, 5, 8],
  ];
  const text = [...corners.map(([x, y, z]) => `v ${x} ${y} ${9 * z}`), ...faces.map((face) => `f ${face.join(' ')}`)];
  await openObj(workbench, 'block', text.join('\n'));
  workbench.run(setScale({ by: 'unit', unit: 'cm' }));
  await shown(workbench);
  expect(await workbench.workshop.shop()).toBeNull();
  expect(isUnfinished(workbench.bench)).toBe(true);
  const ask: FilesAsk = { ...NOTHING, paper: ['cutList'] };
  const made = await workbench.workshop.makeFiles(ask, workbench.project!, '2026-11-27', quiet);
  expect(made?.ok).toBe(false);
});

describe('files', () => {
  it('come as one zip, as the cutter of the project cuts', async () => {
    const cut = [setCutter('blade'), setBridges({ count: 3, widthMm: 2 })].reduce((p, one) => one.apply(p), project);
    const told: number[] = [];
    const ask: FilesAsk = { ...NOTHING, paper: ['cutList', 'gluing', 'report'], sheetSvg: true, dxf: true, stl: true };
    const made = await workshop.makeFiles(ask, cut, '2026-11-27', ({ done }) => told.push(done));
    const { file, names, notes } = expectOk(made!);
    expect(file.name).toBe('maul-head.zip');
    const back = unzipSync(new Uint8Array(await file.blob.arrayBuffer()));
    expect(Object.keys(back)).toEqual([...names]);
    expect(names.slice(0, 4)).toEqual(['cut-list.csv', 'gluing.json', 'report.json', 'sheet-1.dxf']);
    expect(names).toContain('prop.stl');
    expect(new TextDecoder().decode(back['sheet-1.svg'])).not.toContain('PVC');
    expect(JSON.parse(new TextDecoder().decode(back['report.json']))).toHaveProperty('gluing.order');
    expect(notes.length).toBeGreaterThan(0);
    expect(told.length).toBeGreaterThan(0);
    expect(told).toEqual([...told].sort((a, b) => a - b));
  });

  it('come as they are where there is one, with what a laser must never cut where nobody has said what cuts', async () => {
    const { file } = expectOk(
      (await workshop.makeFiles({ ...NOTHING, paper: ['cutList'] }, project, '2026-11-27', quiet))!,
    );
    expect([file.name, file.blob.type]).toEqual(['cut-list.csv', 'text/csv']);
    const dxf = expectOk((await workshop.makeFiles({ ...NOTHING, dxf: true }, project, '2026-11-27', quiet))!).file;
    expect(await dxf.blob.text()).toContain('PVC');
  });

  it('are called off, and a picture too large is refused', async () => {
    const ask: FilesAsk = { ...NOTHING, pngDpi: 200 };
    const gone = workshop.makeFiles(ask, project, '2026-11-27', () => void workshop.stopFiles());
    expect(await gone).toBeNull();
    const refused = await workshop.makeFiles({ ...NOTHING, pngDpi: 2400 }, project, '2026-11-27', quiet);
    expect(refused?.ok === false && refused.problem.code).toBe('png/too-large');
  });
});
