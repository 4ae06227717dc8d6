import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { userEvent } from 'vitest/browser';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import type { Stage } from '../../src/app/stage.ts';
import type { VerbRow } from '../../src/app/verb-row.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { PROPOSE_WORDS } from '../../src/app/propose-words.ts';
import { WORDS } from '../../src/app/words.ts';
import type { SurfacePoint } from '../../src/model/seams.ts';
import { setScale } from '../../src/project/commands.ts';
import { SHADE, shadeObj } from '../support/shade-obj.ts';
import { makeWorkbench, openObj, shown } from '../support/tray-workbench.ts';
import { axeFaults, findIn, restedApp, soon } from './app-element.ts';

// A captured pointer needs a real one; the events here are made.
vi.spyOn(HTMLCanvasElement.prototype, 'setPointerCapture').mockImplementation(() => undefined);

const { sides, rings } = SHADE;
/** Corners of the shade by ring and side; side 0 looks at the viewer. */
const corner = (ring: number, side: number): number => ring * sides + ((side + sides) % sides);

let app: App;
let workbench: Workbench;

beforeAll(async () => {
  ({ workbench } = makeWorkbench());
  app = document.createElement('fl-app');
  app.workbench = workbench;
  app.style.cssText = 'display: block; inline-size: 1200px; block-size: 800px';
  document.body.append(app);
  await openObj(workbench, 'lamp shade', shadeObj());
  workbench.run(setScale({ by: 'unit', unit: 'mm' }));
  await restedApp(app);
  await soon(() => expect(stage().stats?.frames ?? 0).toBeGreaterThan(0));
  await stage().settled();
});

afterEach(async () => {
  steps();
  workbench.setView({
    tool: 'choose',
    choice: { kind: 'nothing' },
    place: null,
    preview: null,
    through: [],
    stretches: [],
  });
  await restedApp(app);
});

afterAll(() => app.remove());

const stage = (): Stage => findIn<Stage>(app, 'fl-stage');
const marks = (): string[] =>
  (workbench.part?.seams.edges ?? []).map((pair) => [...pair].sort((a, b) => a - b).join('-')).sort();
const lineOf = (...corners: number[]): string[] =>
  corners
    .slice(1)
    .map((v, i) => [corners[i], v].sort((a, b) => a - b).join('-'))
    .sort();
const upright = (side: number, from = 0, to = rings): string[] =>
  lineOf(...Array.from({ length: to - from + 1 }, (_, i) => corner(from + i, side)));
const ringLine = (ring: number): string[] => lineOf(...Array.from({ length: sides + 1 }, (_, i) => corner(ring, i)));
const steps = (): number => {
  let count = 0;
  while (workbench.history?.canUndo === true && workbench.history.undoLabel !== 'set the size') {
    workbench.undo();
    count += 1;
  }
  if (workbench.history?.undoLabel !== 'set the size') throw new Error('undone past what the test found');
  return count;
};
const verb = (label: string): HTMLElement => {
  const row = findIn(app, 'fl-chosen-row', 'fl-verb-row');
  const found = [...row.shadowRoot!.querySelectorAll('button')].find((one) => one.textContent.trim().startsWith(label));
  if (found === undefined) throw new Error(`no verb ${label}`);
  return found;
};

/** Place of a corner in the window, px; of the middle of an edge where two are given. */
function placeOf(...corners: number[]): { x: number; y: number } {
  const box = stage().getBoundingClientRect();
  const at = corners.map((v) => {
    const seen = stage().screenOf(v);
    if (seen === null) throw new Error(`corner ${v} is not in sight`);
    return seen;
  });
  const mean = (values: number[]): number => values.reduce((sum, x) => sum + x, 0) / values.length;
  return { x: box.left + mean(at.map(({ x }) => x)), y: box.top + mean(at.map(({ y }) => y)) };
}

function send(type: string, { x, y }: { x: number; y: number }): void {
  findIn(app, 'fl-stage', 'canvas').dispatchEvent(
    new PointerEvent(type, {
      clientX: x,
      clientY: y,
      pointerId: 1,
      pointerType: 'mouse',
      button: 0,
      bubbles: true,
      isPrimary: true,
    }),
  );
}
const frame = (): Promise<unknown> => new Promise((resolve) => requestAnimationFrame(resolve));

async function point(...corners: number[]): Promise<void> {
  send('pointermove', placeOf(...corners));
  await frame();
  await frame();
}

async function click(...corners: number[]): Promise<void> {
  await point(...corners);
  send('pointerdown', placeOf(...corners));
  send('pointerup', placeOf(...corners));
  await frame();
}

/** Presses at the first corner and lets go at the last, over all between. */
async function drag(...corners: number[]): Promise<void> {
  await point(corners[0]);
  send('pointerdown', placeOf(corners[0]));
  let before = placeOf(corners[0]);
  for (const v of corners.slice(1)) {
    const next = placeOf(v);
    for (let i = 1; i <= 3; i += 1) {
      send('pointermove', { x: before.x + ((next.x - before.x) * i) / 3, y: before.y + ((next.y - before.y) * i) / 3 });
      await frame();
      await frame();
    }
    before = next;
  }
  send('pointerup', before);
}

/** Waits until marks are as wanted and shown. */
async function marked(wanted: string[]): Promise<void> {
  await soon(() => expect(marks()).toEqual([...wanted].sort()));
  await shown(workbench);
  await restedApp(app);
}

/** Takes the walking mark to a corner in hand. */
async function stand(at: number): Promise<void> {
  await userEvent.keyboard('e');
  workbench.setView({ cursor: at });
  await restedApp(app);
}

/** Height of points on the shade, in rings, by their weights on corners of the file. */
const heightsOf = (points: readonly SurfacePoint[]): number[] =>
  points.map((point) => {
    if ('vertex' in point) return Math.floor(point.vertex / sides);
    const [ring, side] = [Math.floor(point.face / sides), point.face % sides];
    const own = [corner(ring, side), corner(ring, side + 1), corner(ring + 1, side + 1), corner(ring + 1, side)];
    return point.bary.reduce((sum, weight, i) => sum + weight * Math.floor(own[i] / sides), 0);
  });

describe('by mouse', () => {
  it('a line is drawn along edges by dragging, and undone as one', async () => {
    await userEvent.keyboard('p');
    await drag(corner(5, 0), corner(4, 0), corner(3, 0), corner(3, 1));
    await marked([...upright(0, 3, 5), ...lineOf(corner(3, 0), corner(3, 1))]);
    expect(steps()).toBe(1);
  });

  it('a click follows the line of edges all the way round, shown before it is clicked', async () => {
    await userEvent.click(findIn(app, 'fl-job-sheet', 'fl-seams-line', '[aria-keyshortcuts="L"]'));
    await point(corner(3, 0), corner(3, 1));
    await soon(() => expect(workbench.view.preview).toHaveLength(sides));
    await click(corner(3, 0), corner(3, 1));
    await marked(ringLine(3));
    // Once more takes it away.
    await click(corner(3, 0), corner(3, 1));
    await marked([]);
    expect(steps()).toBe(2);
  });

  it('a click follows the ridge as far as it is sharper than the angle in the field', async () => {
    await userEvent.keyboard('b');
    await restedApp(app);
    await click(corner(3, 0), corner(4, 0));
    await marked(upright(0));
    workbench.undo();
    await restedApp(app);
    const field = findIn<HTMLInputElement>(app, 'fl-chosen-row', 'input[inputmode=decimal]');
    await userEvent.fill(field, '60');
    await userEvent.keyboard('{Enter}');
    await restedApp(app);
    expect(workbench.view.ridgeDeg).toBe(60);
    await click(corner(3, 0), corner(4, 0));
    await restedApp(app);
    expect(marks()).toEqual([]);
    workbench.setView({ ridgeDeg: 30 });
  });

  it('a path runs through picked corners and is parted as one', async () => {
    await userEvent.keyboard('r');
    await click(corner(5, 0));
    await click(corner(2, 0));
    await soon(() => expect(workbench.view.through).toHaveLength(2));
    await click(corner(2, 1));
    await soon(() => expect(workbench.view.through).toHaveLength(3));
    expect(marks()).toEqual([]);
    await click(corner(2, 1));
    await marked([...upright(0, 2, 5), ...lineOf(corner(2, 0), corner(2, 1))]);
    expect(steps()).toBe(1);
  });

  it('a group of the file and an area are parted along their border', async () => {
    await userEvent.click(findIn(app, 'fl-job-sheet', 'fl-seams-line', '.groups button'));
    await marked([...ringLine(2), ...ringLine(4)]);
    expect(steps()).toBe(1);
    expect(await axeFaults(app)).toEqual([]);
  });

  it('a piece is split by a line that runs on to its edges', async () => {
    await userEvent.keyboard('b');
    await restedApp(app);
    await click(corner(3, 0), corner(4, 0));
    await marked(upright(0));
    await userEvent.keyboard('{Escape}');
    const [piece] = workbench.bench.pieces?.pieces ?? [];
    workbench.setView({ choice: { kind: 'piece', piece: piece.id } });
    await restedApp(app);
    await userEvent.click(verb(WORDS.marking.verbs.split));
    await restedApp(app);
    await click(corner(3, 1));
    await click(corner(3, -1));
    await soon(() => expect(workbench.view.through).toHaveLength(2));
    await restedApp(app);
    await userEvent.click(verb(WORDS.marking.verbs.partAlong));
    await soon(() => expect(workbench.bench.pieces?.patches).toHaveLength(2));
    expect(steps()).toBe(2);
  });
});

describe('darts', () => {
  const inList = <T extends HTMLElement>(...path: string[]): T =>
    findIn<T>(app, 'fl-job-sheet', 'fl-seams-line', 'fl-dart-list', ...path);

  it('are pulled from an open edge, tell the stretch on the way and end in a round hole', async () => {
    await userEvent.keyboard('z');
    await drag(corner(rings, 0), corner(5, 0), corner(4, 0), corner(3, 0));
    await marked(upright(0, 3, rings));
    await restedApp(app);
    expect(findIn<VerbRow>(app, 'fl-chosen-row', 'fl-verb-row').facts).toMatch(/60.* long\. Its piece stretches .*%/);
    await userEvent.keyboard('h');
    await restedApp(app);
    expect(workbench.part?.tipHoles).toEqual([{ corner: corner(3, 0), diameterMm: 4 }]);
    expect(workbench.bench.pieces?.pieces[0].tipHoles).toHaveLength(1);
    expect(steps()).toBe(2);
  });

  it('get shorter again on the way back, and begin at edges and seams alone', async () => {
    await userEvent.keyboard('z');
    await drag(corner(rings, 0), corner(5, 0), corner(4, 0), corner(3, 0), corner(4, 0), corner(5, 0));
    await marked(upright(0, 5, rings));
    expect(steps()).toBe(1);
    await drag(corner(4, 0), corner(3, 0));
    await restedApp(app);
    expect(marks()).toEqual([]);
  });

  it('are walked by keyboard, and listed with how they end', async () => {
    await stand(corner(rings, 0));
    await userEvent.keyboard('{Shift>}{ArrowDown}{ArrowDown}{/Shift}{Escape}');
    await marked(upright(0, 4, rings));
    await userEvent.selectOptions(inList<HTMLSelectElement>('select'), 'hole');
    await restedApp(app);
    const field = inList<HTMLInputElement>('fl-length-field', 'input');
    await userEvent.fill(field, '6');
    await userEvent.keyboard('{Enter}');
    await restedApp(app);
    expect(workbench.part?.tipHoles).toEqual([{ corner: corner(4, 0), diameterMm: 6 }]);
    expect(await axeFaults(app)).toEqual([]);
    await userEvent.selectOptions(inList<HTMLSelectElement>('select'), 'point');
    await restedApp(app);
    expect(workbench.part?.tipHoles).toBeUndefined();
  });
});

describe('across faces', () => {
  const paths = () => workbench.part?.seams.paths ?? [];
  const drawn = async (count: number): Promise<void> => {
    await soon(() => expect(paths()).toHaveLength(count));
    await shown(workbench);
    await restedApp(app);
  };
  const heights = (path: number): number[] => heightsOf(paths()[path].points);

  it('a straight line runs from edge to edge through picked places, shown before it is parted', async () => {
    await userEvent.keyboard('r');
    await userEvent.keyboard('l');
    await restedApp(app);
    await click(corner(rings, 0), corner(rings, 1));
    await soon(() => expect(workbench.view.spots).toHaveLength(1));
    await point(corner(0, 0), corner(0, 1));
    await soon(() => expect(workbench.view.previewLines).toHaveLength(1));
    await click(corner(0, 0), corner(0, 1));
    await soon(() => expect(workbench.view.spots).toHaveLength(2));
    expect(workbench.spoken).toBe(WORDS.marking.spoken.placed(2));
    await restedApp(app);
    await userEvent.click(verb(WORDS.marking.verbs.partAlong));
    await drawn(1);
    // A seam across faces is a seam to join and to add to.
    const line = findIn(app, 'fl-job-sheet', 'fl-seams-line');
    expect(line.shadowRoot!.textContent).toContain(WORDS.verbs.joinAll);
    expect(findIn(app, 'fl-job-sheet', 'fl-seams-line', 'fl-proposals').shadowRoot!.textContent).toContain(
      PROPOSE_WORDS.rest,
    );
    // From rim to rim: the shade is unrolled by it.
    expect(workbench.bench.pieces?.patches.map(({ kind }) => kind)).toEqual(['disc']);
    const along = heights(0);
    expect([along[0], along.at(-1)]).toEqual([rings, 0]);
    expect(steps()).toBe(1);
    workbench.setView({ lay: 'edges' });
  });

  it('a smooth curve runs through places picked by keyboard', async () => {
    await userEvent.keyboard('r');
    await userEvent.keyboard('c');
    await stand(corner(rings, 0));
    await userEvent.keyboard('r{ArrowDown}{ArrowDown}{ArrowRight}r{ArrowDown}{ArrowDown}r{Enter}');
    await drawn(1);
    expect(paths()[0].points).toContainEqual({ vertex: corner(4, 1) });
    // It is no row of edges.
    expect(paths()[0].points.some((point) => 'face' in point)).toBe(true);
    expect(steps()).toBe(1);
    workbench.setView({ lay: 'edges' });
  });

  it('the plane in hand parts where it cuts, and at equal spacing', async () => {
    await userEvent.keyboard('u');
    workbench.setView({ plane: { of: 'section', plane: { point: [0, 50, 0], normal: [0, 1, 0] } } });
    await restedApp(app);
    await userEvent.keyboard('8');
    await drawn(1);
    expect(heights(0).every((height) => Math.abs(height - 2.5) < 1e-6)).toBe(true);
    expect(steps()).toBe(1);
    await restedApp(app);
    const [, atPlanes] = findIn(app, 'fl-look-row', '.cut .row').querySelectorAll('button');
    await userEvent.click(atPlanes);
    // At 0, 50 and 100 mm; that at 0 is the rim.
    await drawn(2);
    expect(steps()).toBe(1);
    await userEvent.keyboard('u');
  });

  it('a jagged seam is straightened within the distance, as one change', async () => {
    await stand(corner(rings, 0));
    const jagged = lineOf(
      corner(6, 0),
      corner(5, 0),
      corner(5, 1),
      corner(4, 1),
      corner(4, 0),
      corner(3, 0),
      corner(2, 0),
      corner(1, 0),
      corner(0, 0),
    );
    await userEvent.keyboard(
      '{Shift>}{ArrowDown}{ArrowRight}{ArrowDown}{ArrowLeft}{ArrowDown}{ArrowDown}{ArrowDown}{ArrowDown}{/Shift}{Escape}',
    );
    await marked(jagged);
    const seam = workbench.bench.seams?.chains.find(({ kind }) => kind !== 'open');
    workbench.setView({ choice: { kind: 'seam', seam: seam!.id }, tautMm: 40 });
    await restedApp(app);
    await userEvent.click(verb(WORDS.marking.verbs.straighten));
    await drawn(1);
    expect(marks()).toEqual([]);
    expect(workbench.history?.undoLabel).toBe('straighten the seam');
    expect(steps()).toBe(2);
    workbench.setView({ tautMm: 3 });
  });
});

describe('a seam is moved', () => {
  const paths = () => workbench.part?.seams.paths ?? [];
  /** One seam across faces, half way up between two rows of corners, all the way round. */
  const ring = async (): Promise<void> => {
    workbench.setView({ plane: { of: 'section', plane: { point: [0, 50, 0], normal: [0, 1, 0] } } });
    await restedApp(app);
    await userEvent.keyboard('8');
    await soon(() => expect(paths()).toHaveLength(1));
    workbench.setView({ plane: null });
    await shown(workbench);
    await restedApp(app);
  };
  const moved = async (): Promise<void> => {
    await soon(() => expect(workbench.history?.undoLabel).toBe('move the seam'));
    await shown(workbench);
    await restedApp(app);
  };
  const heights = (): number[] => heightsOf(paths()[0].points);
  /** The seam's own corner on the side that looks at the viewer. */
  const ringCorner = (): number => {
    const { seams, sculpt } = workbench.bench;
    const { vertices } = seams!.chains.find(({ kind }) => kind !== 'open')!;
    return [...vertices].find((v) => sculpt!.positions[3 * v + 2] > 59)!;
  };

  it('across faces by its line, with the pieces laid flat on the way, and undone as one', async () => {
    await ring();
    expect(workbench.bench.pieces?.patches).toHaveLength(2);
    const [before] = workbench.bench.pieces!.patches.map(({ meshTriangles }) => meshTriangles.length);
    await drag(ringCorner(), corner(3, 0), corner(4, 0));
    await moved();
    // Where it was let go it comes to run, on the far side it stays.
    await soon(() => expect(Math.max(...heights())).toBeCloseTo(4, 1));
    await soon(() => expect(workbench.view.previewLines).toBeNull());
    await restedApp(app);
    expect(Math.min(...heights())).toBeCloseTo(2.5, 6);
    expect(workbench.bench.pieces?.patches).toHaveLength(2);
    expect(workbench.bench.pieces!.patches.map(({ meshTriangles }) => meshTriangles.length)).not.toContain(before);
    expect(steps()).toBe(2);
  });

  it('across faces by keys: 1 mm, with Shift 10, farther along, and let go by Escape', async () => {
    await ring();
    const seam = workbench.bench.seams?.chains.find(({ kind }) => kind !== 'open');
    workbench.setView({ choice: { kind: 'seam', seam: seam!.id } });
    await restedApp(app);
    await userEvent.keyboard('m');
    await restedApp(app);
    expect(workbench.view.tool).toBe('move');
    expect(findIn<VerbRow>(app, 'fl-chosen-row', 'fl-verb-row').facts).toBe(WORDS.marking.move.path);
    await userEvent.keyboard('{Shift>}{ArrowUp}{/Shift}{ArrowUp}');
    await moved();
    await soon(() => expect(Math.max(...heights())).toBeGreaterThan(2.5 + 10.5 / 20));
    expect(Math.max(...heights())).toBeLessThan(2.5 + 11.5 / 20);
    await userEvent.keyboard('n');
    await restedApp(app);
    await userEvent.keyboard('{Shift>}{ArrowDown}{/Shift}');
    await soon(() => expect(Math.min(...heights())).toBeLessThan(2.1));
    await shown(workbench);
    await userEvent.keyboard('{Escape}');
    expect([workbench.view.tool, workbench.view.grip]).toEqual(['choose', null]);
    expect(steps()).toBe(3);
  });

  it('along edges by keys, from corner to corner', async () => {
    await stand(corner(rings, 0));
    await userEvent.keyboard('{ArrowDown}');
    await userEvent.keyboard('b{Escape}');
    await marked(upright(0));
    const seam = workbench.bench.seams?.chains.find(({ kind }) => kind !== 'open');
    workbench.setView({ choice: { kind: 'seam', seam: seam!.id } });
    await restedApp(app);
    await userEvent.keyboard('m');
    await userEvent.keyboard('{ArrowRight}');
    await moved();
    expect(marks()).not.toEqual(upright(0).sort());
    expect(marks().join(' ')).toMatch(new RegExp(`\\b${corner(3, 1)}\\b`));
    await userEvent.keyboard('{Escape}');
    expect(steps()).toBe(2);
  });
});

describe('a drawing', () => {
  beforeAll(async () => {
    await userEvent.keyboard('o');
    await stage().settled();
  });
  const paths = () => workbench.part?.seams.paths ?? [];
  const file = (): File =>
    new File(
      ['<svg viewBox="0 0 90 90" width="90mm" height="90mm"><rect x="5" y="7" width="40" height="20"/></svg>'],
      'flap.svg',
    );
  const held = (): DataTransfer => {
    const transfer = new DataTransfer();
    transfer.items.add(file());
    return transfer;
  };
  /** Lengths of its lines where it lies now, mm. */
  const laid = async (): Promise<number[]> => {
    await soon(() => expect(workbench.view.previewLines).not.toBeNull());
    await restedApp(app);
    const { laid: now } = workbench.view;
    return now !== null && 'lines' in now ? now.lines.map(({ lengthMm }) => lengthMm) : [];
  };
  const fill = async (field: string, value: string): Promise<void> => {
    workbench.setView({ previewLines: null });
    await userEvent.fill(findIn(app, 'fl-chosen-row', 'fl-drawing-fields', `.${field}`), value);
    await userEvent.keyboard('{Enter}');
  };
  const drawn = async (): Promise<void> => {
    await soon(() => expect(paths()).toHaveLength(1));
    await shown(workbench);
    await restedApp(app);
  };

  it('dropped on the window lies as seen, goes where it is clicked in the size of its field, and parts as one', async () => {
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: held(), cancelable: true }));
    const [whole] = await laid();
    expect(whole).toBeGreaterThan(120);
    await fill('size', '50');
    const [half] = await laid();
    expect(half / whole).toBeCloseTo(0.5, 1);
    expect(findIn<VerbRow>(app, 'fl-chosen-row', 'fl-verb-row').facts).toMatch(/^flap\.svg, 20.*10.*as you looked/);
    workbench.setView({ previewLines: null });
    await click(corner(3, 0));
    await laid();
    expect(workbench.view.drawing?.place?.point[1]).toBeCloseTo(60, 0);
    expect(await axeFaults(app)).toEqual([]);
    await userEvent.click(verb(WORDS.marking.verbs.partAlong));
    await drawn();
    expect(paths()[0].points[0]).toEqual(paths()[0].points.at(-1));
    expect(workbench.bench.pieces?.patches).toHaveLength(2);
    expect(workbench.view.tool).toBe('choose');
    expect(steps()).toBe(1);
  });

  it('is laid round, turned and moved by keyboard, and put away by Esc', async () => {
    const verbs = app.verbs.filter(({ id }) => id === 'drawing-tool');
    expect(verbs.map(({ label }) => label)).toEqual([WORDS.marking.verbs.drawing]);
    const chooser = findIn<HTMLInputElement>(app, '#drawing-file');
    const choose = (): void => {
      chooser.files = held().files;
      chooser.dispatchEvent(new Event('change'));
    };
    choose();
    await laid();
    await userEvent.keyboard('{Escape}');
    await restedApp(app);
    expect([workbench.view.tool, workbench.view.drawing, workbench.view.previewLines]).toEqual(['choose', null, null]);
    choose();
    await laid();
    await userEvent.keyboard('l');
    await fill('turn', '90');
    await laid();
    findIn(app, 'fl-stage', 'canvas').focus();
    await userEvent.keyboard('{ArrowDown}{Shift>}{ArrowDown}{/Shift}{ArrowLeft}');
    await laid();
    expect(workbench.view.drawing?.shiftMm).toEqual([-1, -11]);
    expect(workbench.view.laid).toMatchObject({ missedShare: 0, closedByMm: 0 });
    await userEvent.keyboard('{Enter}');
    await drawn();
    // Lengths stay: 40 mm are two of the rings.
    const heights = heightsOf(paths()[0].points);
    expect(Math.max(...heights) - Math.min(...heights)).toBeCloseTo(2, 6);
    expect(steps()).toBe(1);
  });
});

describe('the mirror, areas and holds', () => {
  it('marks on one side appear on the other, along edges and across faces', async () => {
    expect(workbench.bench.mirror).not.toBeNull();
    await userEvent.keyboard('0');
    await restedApp(app);
    expect(workbench.view.isMirrored).toBe(true);
    await stand(corner(rings, 1));
    await userEvent.keyboard('{Shift>}{ArrowDown}{/Shift}');
    const { normal } = workbench.bench.mirror!;
    const opposite = normal.x ** 2 > 0.5 ? -1 : 3;
    await marked([...upright(1, 5, 6), ...upright(opposite, 5, 6)]);
    expect(steps()).toBe(1);
    await userEvent.click(findIn(app, 'fl-job-sheet', 'fl-seams-line', 'label input[type=checkbox]'));
    expect(workbench.view.isMirrored).toBe(false);
  });

  it('an area is kept clear with a key, and preferred in the list', async () => {
    const [piece] = workbench.bench.pieces?.pieces ?? [];
    workbench.setView({ choice: { kind: 'piece', piece: piece.id }, place: 0 });
    await restedApp(app);
    await userEvent.keyboard('k');
    await restedApp(app);
    expect(workbench.part?.regions.map(({ give, seams }) => [give, seams])).toEqual([['normal', 'clear']]);
    const select = findIn<HTMLSelectElement>(
      app,
      'fl-job-sheet',
      'fl-fit-line',
      'fl-area-list',
      'select[aria-label^="Seams"]',
    );
    await userEvent.selectOptions(select, 'prefer');
    expect(workbench.part?.regions[0].seams).toBe('prefer');
    expect(await axeFaults(app)).toEqual([]);
    expect(steps()).toBe(2);
  });

  it('a seam and a piece are held, and let go', async () => {
    await stand(corner(rings, 0));
    await userEvent.keyboard('{Shift>}{ArrowDown}{/Shift}{Escape}');
    await marked(upright(0, 5, 6));
    const seam = workbench.bench.seams?.chains.find(({ kind }) => kind !== 'open');
    workbench.setView({ choice: { kind: 'seam', seam: seam!.id } });
    await restedApp(app);
    await userEvent.keyboard('h');
    expect(workbench.part?.heldSeams).toHaveLength(1);
    await userEvent.keyboard('h');
    expect(workbench.part?.heldSeams).toBeUndefined();
    const [piece] = workbench.bench.pieces?.pieces ?? [];
    workbench.setView({ choice: { kind: 'piece', piece: piece.id } });
    await restedApp(app);
    await userEvent.click(verb(WORDS.marking.verbs.hold));
    expect(workbench.part?.pieceSettings.some(({ held }) => held === true)).toBe(true);
  });
});

describe('by keyboard', () => {
  it('edges are parted on the way, and undone as one', async () => {
    await stand(corner(5, 0));
    await userEvent.keyboard('{Shift>}{ArrowDown}{ArrowDown}{/Shift}');
    await marked(upright(0, 3, 5));
    expect(steps()).toBe(1);
  });

  it('the line and the ridge of the edge just walked are followed', async () => {
    await stand(corner(3, 0));
    await userEvent.keyboard('{ArrowRight}');
    await userEvent.keyboard('l');
    await marked(ringLine(3));
    await userEvent.keyboard('{ArrowUp}b');
    await soon(() => expect(marks()).toHaveLength(sides + rings));
    await shown(workbench);
    expect(steps()).toBe(2);
  });

  it('a path is picked on the way; Escape takes a corner back', async () => {
    await stand(corner(5, 0));
    await userEvent.keyboard('r{ArrowDown}{ArrowDown}r');
    await soon(() => expect(workbench.view.through).toHaveLength(2));
    await restedApp(app);
    // L is how the path runs on: the line all the way round is not offered under the same key.
    expect(() => verb(WORDS.marking.verbs.followRound)).toThrow('no verb');
    await userEvent.keyboard('{ArrowRight}r');
    await soon(() => expect(workbench.view.through).toHaveLength(3));
    await userEvent.keyboard('{Escape}');
    expect(workbench.view.through).toHaveLength(2);
    await userEvent.keyboard('{Enter}');
    await marked(upright(0, 3, 5));
    expect(steps()).toBe(1);
  });

  it('a piece is split, a seam straightened and an area parted round', async () => {
    await stand(corner(rings, 0));
    await userEvent.keyboard('{ArrowDown}b{Escape}');
    await marked(upright(0));
    const [piece] = workbench.bench.pieces?.pieces ?? [];
    workbench.setView({ choice: { kind: 'piece', piece: piece.id } });
    await restedApp(app);
    await userEvent.keyboard('b');
    await stand(corner(3, 2));
    await userEvent.keyboard('r');
    workbench.setView({ cursor: corner(3, -2) });
    await userEvent.keyboard('r{Enter}{Escape}');
    await soon(() => expect(workbench.bench.pieces?.patches).toHaveLength(2));
    await restedApp(app);
    expect(steps()).toBe(2);
    await restedApp(app);
    await stand(corner(rings, 1));
    await userEvent.keyboard('{Shift>}{ArrowDown}{ArrowLeft}{ArrowDown}{/Shift}{Escape}');
    await soon(() => expect(marks()).toHaveLength(3));
    await shown(workbench);
    const seam = workbench.bench.seams?.chains.find(({ kind }) => kind !== 'open');
    workbench.setView({ choice: { kind: 'seam', seam: seam!.id }, tautMm: 30 });
    await restedApp(app);
    await userEvent.keyboard('z');
    await soon(() => expect(workbench.part?.seams.paths).toHaveLength(1));
    await shown(workbench);
    expect(steps()).toBe(2);
    await restedApp(app);
    const [whole] = workbench.bench.pieces?.pieces ?? [];
    workbench.setView({ choice: { kind: 'piece', piece: whole.id }, tautMm: 3 });
    await restedApp(app);
    await userEvent.keyboard('n');
    await restedApp(app);
    await userEvent.keyboard('l');
    // One side of the shade: its border without the rims.
    await soon(() => expect(marks()).toHaveLength(2 * rings));
  });

  it('every way is in the finder', async () => {
    const labels = app.verbs.map(({ label }) => label);
    const { followRound, followRidge, round } = WORDS.marking.verbs;
    expect(labels).toEqual(expect.arrayContaining([followRound, followRidge, round('band'), WORDS.verbs.pathTool]));
    await userEvent.keyboard('/');
    await restedApp(app);
    await userEvent.keyboard('round band{Enter}');
    await marked([...ringLine(2), ...ringLine(4)]);
  });

  it('says what is in hand', async () => {
    await userEvent.keyboard('l');
    await restedApp(app);
    expect(findIn<VerbRow>(app, 'fl-chosen-row', 'fl-verb-row').facts).toBe(WORDS.marking.tools.round);
    expect(verb(WORDS.marking.verbs.followRound).getAttribute('aria-pressed')).toBe('true');
    await userEvent.keyboard('{Escape}');
    expect(workbench.view.tool).toBe('choose');
  });
});

describe('the sculpt made simpler for paper', () => {
  const inFields = <T extends HTMLElement>(...path: string[]): T =>
    findIn<T>(app, 'fl-job-sheet', 'fl-size-line', 'fl-simplify-fields', ...path);
  const told = (): string => findIn(app, 'fl-job-sheet', 'fl-size-line', 'fl-findings', 'ul').textContent;
  const triangles = (): number => (workbench.bench.sculpt?.triangles.length ?? 0) / 3;

  it('by keyboard to so many triangles: marks stay, and how far it moved is told both ways', async () => {
    await userEvent.keyboard('b');
    await restedApp(app);
    await click(corner(3, 0), corner(4, 0));
    await marked(upright(0));
    await userEvent.keyboard('{Escape}/');
    await restedApp(app);
    await userEvent.keyboard('simplify{Enter}');
    await userEvent.keyboard('1{Enter}');
    await restedApp(app);
    expect(inFields('#fault').textContent).not.toBe('');
    expect(workbench.part?.simplify).toBeUndefined();
    await userEvent.keyboard('{Backspace}60{Enter}');
    await soon(() => expect(triangles()).toBeLessThanOrEqual(60));
    await restedApp(app);
    expect(marks()).toEqual(upright(0).sort());
    expect(workbench.bench.pieces?.patches.map(({ kind }) => kind)).toEqual(['disc']);
    expect(told()).toMatch(/from 96 to \d+ triangles.*new from old.*old from new/);
    expect(await axeFaults(app)).toEqual([]);
    expect(steps()).toBe(2);
    await restedApp(app);
    expect(triangles()).toBe(2 * sides * rings);
    expect(inFields<HTMLInputElement>('input').value).toBe('');
  });

  it('as far as its surface may move, and taken as it is again', async () => {
    await userEvent.click(inFields('summary'));
    await userEvent.fill(inFields('fl-length-field', 'input'), '0.1');
    await userEvent.keyboard('{Enter}');
    await soon(() => expect(workbench.part?.simplify?.deviationMm).toBe(0.1));
    await restedApp(app);
    // Between rims and borders of its groups the walls are flat: their rows go, and nothing moves.
    expect(triangles()).toBeLessThan(2 * sides * rings);
    expect(workbench.bench.findings.find(({ code }) => code === 'simplify/done')?.value).toBeLessThan(0.01);
    await userEvent.click(inFields('button'));
    await restedApp(app);
    expect(triangles()).toBe(2 * sides * rings);
    expect(steps()).toBe(2);
  });
});

describe('proposals', () => {
  const inTable = <T extends HTMLElement>(selector: string): T =>
    findIn<T>(app, 'fl-job-sheet', 'fl-seams-line', 'fl-proposals', selector);
  const stopped = () => soon(() => expect(workbench.view.proposals?.state).toBe('done'));

  it('stand side by side with their figures, show their seams where one points, and one is taken', async () => {
    await userEvent.keyboard('m');
    await soon(() => expect(Object.keys(workbench.view.proposals?.answers ?? {})).toHaveLength(3));
    await restedApp(app);
    if (workbench.view.proposals?.state === 'looking') await userEvent.click(inTable('button.next'));
    await stopped();
    await restedApp(app);
    const texts = [...inTable('tbody').querySelectorAll('tr')].map((row) =>
      row.textContent.replace(/\s+/g, ' ').trim(),
    );
    // Unrolled along one side: one piece, no stretch, and the foam of the neutral surface.
    expect(texts.find((text) => text.startsWith('Pieces'))).toBe('Pieces 1 1 1');
    expect(texts.find((text) => text.startsWith('Stretch'))).toMatch(/^Stretch 0\.0/);
    expect(texts.find((text) => text.startsWith('Sheets'))).toBe('Sheets 1 1 1');
    expect(await axeFaults(app)).toEqual([]);
    // What is told of all three is told once, and of an answer that holds as a bend.
    const { proposals } = workbench.view;
    const reasons = [{ text: 'Its skin is strained 14 %.', triangle: 0 }];
    const { few, between, simple } = proposals!.answers;
    const bent = [few, between, simple].map((answer) => ({ ...answer!, reasons }));
    workbench.setView({ proposals: { ...proposals!, answers: { few: bent[0], between: bent[1], simple: bent[2] } } });
    await restedApp(app);
    expect(inTable('.reasons').textContent.replace(/\s+/g, ' ').trim()).toBe(
      'Bends tightly, all three: Its skin is strained 14 %.',
    );
    workbench.setView({
      proposals: {
        ...proposals!,
        answers: { few: { ...bent[0], isFeasible: false }, between: bent[1], simple: simple! },
      },
    });
    await restedApp(app);
    expect([...inTable('.reasons').children].map(({ textContent }) => textContent.trim().replace(/:.*/s, ''))).toEqual([
      'Breaks a limit, Few pieces',
      'Bends tightly, Between',
    ]);
    const limit = inTable<HTMLInputElement>('.begin input');
    await userEvent.fill(limit, '99');
    await userEvent.keyboard('{Enter}');
    expect(Number(limit.value)).toBeLessThan(50);
    const [cell] = inTable('tbody').querySelectorAll('td + td');
    cell.dispatchEvent(new PointerEvent('pointerenter'));
    await soon(() => expect(workbench.view.preview).toHaveLength(rings));
    await userEvent.click(inTable('tbody tr:last-child td:last-child button'));
    await soon(() => expect(marks()).toHaveLength(rings));
    await shown(workbench);
    expect(workbench.history?.undoLabel).toBe('take a proposal');
    expect(workbench.bench.pieces?.pieces).toHaveLength(1);
    expect(steps()).toBe(1);
    await userEvent.click(inTable('.row button.plain'));
    expect(workbench.view.proposals).toBeNull();
  });

  it('are told on which side seams are seen least, and that can be undone', async () => {
    const select = (): HTMLSelectElement => inTable<HTMLSelectElement>('.begin select');
    await userEvent.selectOptions(select(), 'back');
    await restedApp(app);
    expect(workbench.part?.hiddenSide).toBe('back');
    expect(await axeFaults(app)).toEqual([]);
    await userEvent.selectOptions(select(), 'nowhere');
    await restedApp(app);
    expect(workbench.part?.hiddenSide).toBeUndefined();
    expect(steps()).toBe(2);
  });

  it('leave what is marked where the rest is asked for, by keyboard alone', async () => {
    await stand(corner(0, 3));
    workbench.setView({ cursor: corner(3, 0) });
    await userEvent.keyboard('{ArrowRight}l{Escape}');
    await marked(ringLine(3));
    await userEvent.keyboard('/');
    await restedApp(app);
    await userEvent.keyboard('propose rest{Enter}');
    await soon(() => expect(Object.keys(workbench.view.proposals?.answers ?? {})).toHaveLength(3));
    if (workbench.view.proposals?.state === 'looking') await userEvent.keyboard('m');
    await stopped();
    await userEvent.keyboard('/');
    await restedApp(app);
    await userEvent.keyboard('take few{Enter}');
    await soon(() => expect(marks().length).toBeGreaterThan(sides));
    expect(marks()).toEqual(expect.arrayContaining(ringLine(3)));
    workbench.setView({ proposals: null });
  });

  it('tell what it would cost to join each seam, the cheapest first, and it is joined from there', async () => {
    await stand(corner(rings, 0));
    await userEvent.keyboard('{ArrowDown}');
    await userEvent.keyboard('b{Escape}');
    await marked(upright(0));
    const inList = <T extends HTMLElement>(selector: string): T =>
      findIn<T>(app, 'fl-job-sheet', 'fl-seams-line', 'fl-cost-list', selector);
    await userEvent.click(inList('button'));
    await soon(() => expect(workbench.view.costs).toMatchObject({ isRunning: false }));
    await restedApp(app);
    expect(inList('tbody tr').textContent.replace(/\s+/g, ' ')).toMatch(/1 to itself/);
    expect(await axeFaults(app)).toEqual([]);
    await userEvent.click(inList('tbody button'));
    await restedApp(app);
    await userEvent.keyboard('j');
    await marked([]);
    // Of other seams the list says nothing.
    expect(findIn(app, 'fl-job-sheet', 'fl-seams-line', 'fl-cost-list').shadowRoot?.querySelector('table')).toBeNull();
  });
});
