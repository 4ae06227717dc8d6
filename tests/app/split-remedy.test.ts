import { expect, it } from 'vitest';
import { remedyFor } from '../../src/app/remedies.ts';
import { addStockSheet, setFillRule } from '../../src/project/stock-commands.ts';
import { makeWorkbench, openPartedTray, shown } from '../support/tray-workbench.ts';

it('offers the straight cut as soon as the sheets in hand are too small, and parts the piece along it', async () => {
  const { workbench } = makeWorkbench();
  await openPartedTray(workbench);
  const { pieces } = workbench.bench.pieces!;
  const { foam } = pieces[0];
  const longest = Math.max(...pieces.map(({ areaMm2 }) => Math.sqrt(areaMm2)));
  const shape = { kind: 'rectangle', widthMm: 0.9 * longest, heightMm: 0.9 * longest } as const;
  workbench.run(addStockSheet({ id: 'stock-1', name: 'bits', foam, shape, count: 40 }));
  workbench.run(setFillRule(foam, { buys: false, borderMm: 0 }));
  await shown(workbench);
  const finding = workbench.bench.findings.find(
    ({ code, text }) => code === 'nest/too-large' && text.includes('line'),
  )!;
  const remedy = remedyFor(finding, workbench.bench);
  expect(remedy?.label).toBe('Part it along the line');
  workbench.run(remedy!.command);
  await shown(workbench);
  expect(workbench.bench.pieces!.pieces.length).toBeGreaterThan(pieces.length);
});
