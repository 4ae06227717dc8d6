import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { isTaken } from '../../src/app/key-cap.ts';
import { pickForPath } from '../../src/app/mark-actions.ts';
import { layAgain } from '../../src/app/path-manner.ts';
import type { WindowActions } from '../../src/app/verb.ts';
import { verbsFor } from '../../src/app/verbs.ts';
import { FIRST_VIEW, NO_PATH } from '../../src/app/view-state.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { makeWorkbench, openPartedTray } from '../support/tray-workbench.ts';

let workbench: Workbench;
/** Only what is asked for while verbs are listed. */
const ACTIONS = { layoutSearch: () => null } as unknown as WindowActions;
beforeAll(async () => {
  ({ workbench } = makeWorkbench());
  await openPartedTray(workbench);
});
beforeEach(() => workbench.setView({ ...FIRST_VIEW, ...NO_PATH, tool: 'path', lay: 'edges' }));

/** Corner at the end of an edge of the sculpt. */
const corner = (edge: number, end: 0 | 1): number => workbench.bench.sculpt!.edgeVertices[2 * edge + end];

describe('places picked for a path', () => {
  it('stay when it is led otherwise, and when it is led along edges again', async () => {
    const picked = [corner(0, 0), corner(0, 1)];
    for (const one of picked) await pickForPath(workbench, one);
    expect(workbench.view.through).toEqual(picked);
    await layAgain(workbench, 'straight');
    expect(workbench.view.spots).toEqual(picked.map((one) => ({ corner: one })));
    expect([workbench.view.through, workbench.view.lay]).toEqual([[], 'straight']);
    expect(workbench.view.previewLines).toHaveLength(1);
    expect(workbench.spoken.trim()).toBe('The 2 picked places stay.');
    await layAgain(workbench, 'curve');
    expect(workbench.view.spots).toHaveLength(2);
    await layAgain(workbench, 'edges');
    expect(workbench.view.through).toEqual(picked);
    expect(workbench.view.preview).toEqual([0]);
    expect(workbench.view.spots).toEqual([]);
  });

  it('go to the nearest corner where they lie on a face, and that is said', async () => {
    const { triangles, positions } = workbench.bench.sculpt!;
    const [a, b, c] = [...triangles.subarray(0, 3)];
    const near = (k: number): number =>
      0.8 * positions[3 * b + k] + 0.1 * (positions[3 * a + k] + positions[3 * c + k]);
    workbench.setView({ lay: 'straight', spots: [{ triangle: 0, point: [near(0), near(1), near(2)] }] });
    await layAgain(workbench, 'edges');
    expect(workbench.view.through).toEqual([b]);
    expect(workbench.spoken).toContain('nearest corner');
  });

  it('are none to keep where none was picked', async () => {
    await layAgain(workbench, 'curve');
    expect([workbench.view.lay, workbench.view.spots]).toEqual(['curve', []]);
  });
});

it('a key that two verbs have belongs to the one beside what is chosen', () => {
  const piece = workbench.bench.pieces!.pieces[0].id;
  workbench.setView({ tool: 'choose', choice: { kind: 'piece', piece } });
  const verbs = verbsFor(workbench, ACTIONS);
  const find = (id: string) => verbs.find((verb) => verb.id === id)!;
  expect([find('ease').key, find('propose').key]).toEqual(['m', 'm']);
  expect([isTaken(verbs, find('ease')), isTaken(verbs, find('propose'))]).toEqual([false, true]);
  workbench.setView({ choice: { kind: 'nothing' } });
  const free = verbsFor(workbench, ACTIONS);
  expect(
    isTaken(
      free,
      free.find(({ id }) => id === 'propose')!,
    ),
  ).toBe(false);
});
