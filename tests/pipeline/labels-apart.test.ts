import { expect, it } from 'vitest';
import { doTurnedBoxesMeet } from '../../src/geom/turned-box.ts';
import { setThickness } from '../../src/project/commands.ts';
import { labelsOf } from '../../src/steps/tile/labels.ts';
import { runSample } from '../support/run-sample.ts';

// The lantern's vent is a narrow band of six grooved panels: its labels are wider than they are, and none finds room inside.
it('words beside a piece stand apart, so that no two read as one sentence', async () => {
  const { templates } = await runSample('lantern', (project) => setThickness(10).apply(project));
  let seen = 0;
  for (const { drawing } of templates ?? []) {
    const besides = labelsOf(drawing).labels.filter(({ leader }) => leader !== null);
    seen += besides.length;
    for (const [i, { box, lines }] of besides.entries()) {
      for (const other of besides.slice(i + 1)) {
        const near = { ...box, halfWidth: box.halfWidth + 2.3, halfHeight: box.halfHeight + 0.8 };
        expect(doTurnedBoxesMeet(near, other.box), `${lines[0].text} beside ${other.lines[0].text}`).toBe(false);
      }
    }
  }
  expect(seen).toBeGreaterThan(20);
});
