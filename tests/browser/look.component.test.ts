import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import { needlesOf, readingAt } from '../../src/app/legend/reading.ts';
import type { Stage } from '../../src/app/stage.ts';
import type { PictureManner } from '../../src/viewport/picture-manner.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { axeFaults, findIn, openTrayApp, restedApp, soon } from './app-element.ts';
import { TRAY_MM } from './open-tray.ts';

// A captured pointer needs a real one; the events here are made.
vi.spyOn(HTMLCanvasElement.prototype, 'setPointerCapture').mockImplementation(() => undefined);

let app: App;
let workbench: Workbench;
let thickness: number;

beforeAll(async () => {
  ({ app, workbench } = await openTrayApp());
  app.style.cssText = 'display:block;inline-size:900px;block-size:420px';
  thickness = workbench.bench.shell?.thicknessMm ?? 0;
  await soon(() => expect(stage().stats?.frames ?? 0).toBeGreaterThan(0));
});

beforeEach(async () => {
  workbench.setView({ plane: null, look: 'foam', stage: 0 });
  await drawn();
});

afterAll(() => app.remove());

const stage = (): Stage => findIn<Stage>(app, 'fl-stage');

async function drawn(): Promise<void> {
  await restedApp(app);
  await stage().settled();
  for (let i = 0; i < 2; i += 1) await new Promise((resolve) => requestAnimationFrame(resolve));
}

function strike(key: string, shiftKey = false): void {
  const canvas = findIn(app, 'fl-stage', 'canvas');
  canvas.focus();
  canvas.dispatchEvent(
    new KeyboardEvent('keydown', { key, shiftKey, bubbles: true, composed: true, cancelable: true }),
  );
}

async function press(key: string): Promise<void> {
  strike(key);
  await drawn();
}

describe('looking into the wall', () => {
  it('shows one surface after the other by key, and any by its radio', async () => {
    const seen: string[] = [];
    for (let i = 0; i < 6; i += 1) {
      await press('v');
      seen.push(workbench.view.look);
    }
    expect(seen).toEqual(['face', 'neutral', 'back', 'sculpt', 'prop', 'foam']);
    const radios = [...findIn(app, 'fl-look-row').shadowRoot!.querySelectorAll<HTMLInputElement>('input[type=radio]')];
    radios[2].click();
    await drawn();
    expect(workbench.view.look).toBe('neutral');
  });

  it('draws the surface alone: fewer triangles than the foam has', async () => {
    const foam = stage().stats?.triangles ?? 0;
    workbench.setView({ look: 'back' });
    await soon(() => expect(stage().stats?.triangles ?? 0).toBeLessThan(foam));
  });

  it('cuts everything open by key, with the size of the cut, and Escape closes it', async () => {
    await press('u');
    await soon(() => expect(workbench.view.section).not.toBeNull());
    // The sculpt is the face of the foam: the cut through the middle is as wide and high as it.
    expect(workbench.view.section?.breadthMm).toBeCloseTo(TRAY_MM.width, 3);
    expect(workbench.view.section?.heightMm).toBeCloseTo(TRAY_MM.height, 3);
    expect(findIn(app, 'fl-look-row', '.cut p').textContent).toContain('180\u00a0mm wide, 100\u00a0mm high');
    await press('Escape');
    expect(workbench.view.plane).toBeNull();
    expect(workbench.view.section).toBeNull();
  });

  it('moves and leans the cut by arrow keys, and the section follows', async () => {
    await press('u');
    const { point } = workbench.view.plane!.plane;
    await press('ArrowUp');
    strike('ArrowUp', true);
    await drawn();
    expect(workbench.view.plane!.plane.point[2] - point[2]).toBeCloseTo(11, 9);
    for (let i = 0; i < 6; i += 1) {
      strike('ArrowRight');
      await app.updateComplete;
      await stage().updateComplete;
    }
    // Leaned by 30 degrees about the upright, from one side wall to where it leaves by the back: half a width, and what is left of the depth.
    const lean = Math.PI / 6;
    const breadth = (TRAY_MM.width / 2 + (TRAY_MM.depth / 2 - 11) / Math.tan(lean)) / Math.cos(lean);
    await soon(() => expect(workbench.view.section?.breadthMm).toBeCloseTo(breadth, 3));
  });

  it('tells how thick the foam is in the cut under the pointer, of the sheet it is cut from', async () => {
    await press('u');
    await soon(() => expect(workbench.view.section).not.toBeNull());
    stage().look('front');
    stage().frame('sculpt');
    await drawn();
    await drawn();
    const box = findIn(app, 'fl-stage', 'canvas').getBoundingClientRect();
    const send = (type: string, x: number, y: number): boolean =>
      findIn(app, 'fl-stage', 'canvas').dispatchEvent(
        new PointerEvent(type, {
          clientX: x,
          clientY: y,
          pointerId: 1,
          pointerType: 'mouse',
          bubbles: true,
          button: 0,
        }),
      );
    // Across the picture from left to right at half height: somewhere there lies a wall.
    const found = new Set<number>();
    for (let x = box.left + 40; x < box.right - 40 && found.size === 0; x += 3) {
      send('pointermove', x, box.top + 0.55 * box.height);
      await new Promise((resolve) => requestAnimationFrame(resolve));
      await new Promise((resolve) => requestAnimationFrame(resolve));
      if (workbench.view.thicknessMm !== null) found.add(Math.round(1000 * workbench.view.thicknessMm) / 1000);
    }
    expect([...found]).toEqual([thickness]);
  });

  it('colours every seam by its gap and overlap, and reads the figures where one points', async () => {
    await press('d');
    expect(workbench.view.colouring).toBe('fit');
    const scale = findIn(app, 'fl-legend', 'fl-scale-bar', 'svg');
    expect(scale.getAttribute('aria-label')).toContain('overlap');
    const { seams } = workbench.bench;
    const read = () => {
      const { under, bends } = workbench.view;
      return under === null ? null : readingAt('fit', workbench.bench, bends, under);
    };
    const at = [...seams!.chainOfEdge].flatMap((chain, edge) => {
      if (chain < 0 || seams!.chains[chain].kind === 'open') return [];
      const ends = [0, 1].map((i) => stage().screenOf(workbench.bench.sculpt!.edgeVertices[2 * edge + i]));
      return ends.every((end) => end !== null && !end.hidden) ? [ends as { x: number; y: number }[]] : [];
    })[0];
    const box = findIn(app, 'fl-stage', 'canvas').getBoundingClientRect();
    await soon(() => {
      findIn(app, 'fl-stage', 'canvas').dispatchEvent(
        new PointerEvent('pointermove', {
          clientX: box.left + (at[0].x + at[1].x) / 2,
          clientY: box.top + (at[0].y + at[1].y) / 2,
          pointerId: 1,
          pointerType: 'mouse',
          bubbles: true,
        }),
      );
      expect(read()?.kind).toBe('fit');
    });
    // Flat panels close on the bisecting plane of their fold: foam model 4.
    const [faceGap] = needlesOf(read()!);
    expect(Math.abs(faceGap)).toBeLessThan(1e-6);
    await press('d');
    expect(workbench.view.colouring).toBe('plain');
  });

  it('puts the prop together as it was cut, takes it apart in order, and cuts it open', async () => {
    workbench.setView({ look: 'prop' });
    await soon(() => expect(workbench.view.prop?.plates).toHaveLength(6));
    await drawn();
    const said = (): string => findIn(app, 'fl-look-row', '.in-place p').textContent.replace(/\s+/g, ' ').trim();
    expect(said()).toContain('6 of 6 pieces in place');
    workbench.setView({ stage: 0.5 });
    await drawn();
    expect(said()).toContain('3 of 6 pieces in place');
    workbench.setView({ stage: 0 });
    await press('u');
    // Cut through the middle, the plates show the outline of the sculpt.
    await soon(() => expect(workbench.view.section?.breadthMm).toBeCloseTo(TRAY_MM.width, 3));
    workbench.setView({ look: 'foam' });
    await drawn();
    expect(workbench.view.prop).toBeNull();
  });

  it('keeps all plates in sight while the prop is taken apart, and comes near again', async () => {
    const size = (): number => {
      const [a, b] = [stage().screenOf(0), stage().screenOf(6)];
      return a === null || b === null ? 0 : Math.hypot(a.x - b.x, a.y - b.y);
    };
    workbench.setView({ look: 'prop', stage: 0 });
    await soon(() => expect(workbench.view.prop).not.toBeNull());
    stage().frame('sculpt');
    await drawn();
    await soon(() => expect(size()).toBeGreaterThan(0));
    await drawn();
    const near = size();
    workbench.setView({ stage: 1 });
    // Plates come off by 0.14 of the diagonal: what stands still is seen clearly smaller.
    await soon(() => expect(size()).toBeLessThan(0.92 * near));
    workbench.setView({ stage: 0 });
    await soon(() => expect(size()).toBeGreaterThan(0.99 * near));
  });

  it('has no faults of access with the cut open', async () => {
    await press('u');
    await soon(() => expect(workbench.view.section).not.toBeNull());
    expect(await axeFaults(app)).toEqual([]);
  });
});

describe('the six sides', () => {
  const sides = (): HTMLButtonElement[] => [
    ...findIn(app, 'fl-stage-sides').shadowRoot!.querySelectorAll<HTMLButtonElement>('button'),
  ];
  /** Which way a corner of the tray lies from another one in the picture, px. */
  const way = (from: number, to: number): number =>
    (stage().screenOf(to)?.x ?? NaN) - (stage().screenOf(from)?.x ?? NaN);

  it('are each looked from by a button beside the scene, and one shows the whole prop', async () => {
    expect(sides().map((button) => button.textContent?.trim())).toEqual([
      'front',
      'left',
      'back',
      'right',
      'top',
      'below',
      'Whole prop',
    ]);
    const [front, , back, , , below, whole] = sides();
    front.click();
    await drawn();
    const wide = way(0, 1);
    expect(wide).toBeGreaterThan(100);
    back.click();
    await drawn();
    expect(way(0, 1)).toBeLessThan(-100);
    below.click();
    await drawn();
    // From below the underside is nothing's other side.
    expect(stage().screenOf(0)?.hidden).toBe(false);
    front.click();
    await drawn();
    for (let i = 0; i < 4; i += 1) stage().look('nearer');
    await drawn();
    expect(way(0, 1)).toBeGreaterThan(1.5 * wide);
    whole.click();
    await drawn();
    expect(way(0, 1)).toBeCloseTo(wide, 0);
  });
});

describe('how finely the bench is drawn', () => {
  const choose = async (picture: PictureManner): Promise<void> => {
    const radios = findIn(app, 'fl-job-sheet', 'fl-job-foot').shadowRoot!.querySelectorAll<HTMLInputElement>(
      'input[name=picture]',
    );
    radios[['auto', 'fine', 'plain'].indexOf(picture)].click();
    await soon(() => expect(stage().picture).toBe(picture));
    await soon(() => expect(stage().stats?.frames ?? 0).toBeGreaterThan(0));
    await drawn();
    await soon(() => expect(stage().stats?.triangles ?? 0).toBeGreaterThan(100));
  };
  const shadows = (): number => stage().stats?.shadowCalls ?? -1;

  it('is chosen at the foot of the job sheet, and shows the same things anew', async () => {
    await choose('plain');
    expect(shadows()).toBe(0);
    workbench.setView({ look: 'neutral' });
    await choose('fine');
    await soon(() => expect(shadows()).toBeGreaterThan(0));
    // Moving the eye draws no shadows anew, and they stay counted.
    stage().look('turn-left');
    await drawn();
    expect(shadows()).toBeGreaterThan(0);
    expect(stage().hasScene).toBe(true);
    await press('v');
    expect(workbench.view.look).toBe('back');
    await choose('auto');
    expect(shadows()).toBe(0); // the processor draws here
  });
});
