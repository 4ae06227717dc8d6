import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { BenchScene, NoWebGl, type BenchPick, type BenchPlane } from '../../src/viewport/bench-scene.ts';
import type { SectionFigures } from '../../src/viewport/bench-contract.ts';
import { soon } from './app-element.ts';
import { boxViews, type BoxViews } from '../viewport/bench-views.ts';

const SIZE = { width: 360, height: 240 };

interface Bench {
  readonly scene: BenchScene;
  readonly canvas: HTMLCanvasElement;
  readonly views: BoxViews;
  readonly hovers: BenchPick[];
  readonly picks: { pick: BenchPick; shift: boolean; alt: boolean }[];
  readonly lost: string[];
  readonly sections: (SectionFigures | null)[];
  readonly planes: { plane: BenchPlane; isDone: boolean }[];
}

function makeCanvas(): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.style.cssText = `display:block;width:${SIZE.width}px;height:${SIZE.height}px;position:fixed;left:0;top:0`;
  document.body.append(canvas);
  return canvas;
}

async function makeBench(): Promise<Bench> {
  const canvas = makeCanvas();
  const hovers: BenchPick[] = [];
  const picks: Bench['picks'] = [];
  const lost: string[] = [];
  const planes: Bench['planes'] = [];
  const sections: Bench['sections'] = [];
  const scene = new BenchScene(canvas, {
    onHover: (pick) => hovers.push(pick),
    onPick: (pick, keys) => picks.push({ pick, ...keys }),
    onGrab: () => false,
    onDrag: () => undefined,
    onDrop: () => undefined,
    onPlane: (plane, isDone) => planes.push({ plane, isDone }),
    onSection: (figures) => sections.push(figures),
    onDrawn: () => undefined,
    onContextLost: () => lost.push('lost'),
    onContextRestored: () => lost.push('restored'),
  });
  const made = { scene, canvas, views: boxViews(), hovers, picks, lost, planes, sections };
  scene.setReducedMotion(true);
  scene.show(made.views);
  await scene.settled();
  return made;
}

/** Waits until no more pictures are asked for. */
async function pictures(): Promise<void> {
  for (let i = 0; i < 4; i += 1) await new Promise((resolve) => requestAnimationFrame(resolve));
}

function send({ canvas }: Bench, type: string, x: number, y: number, more: PointerEventInit = {}): void {
  canvas.dispatchEvent(
    new PointerEvent(type, { clientX: x, clientY: y, pointerId: 1, pointerType: 'mouse', bubbles: true, ...more }),
  );
}

async function hover(bench: Bench, x: number, y: number): Promise<BenchPick | undefined> {
  send(bench, 'pointermove', x, y);
  await pictures();
  return bench.hovers.at(-1);
}

/** Draw calls of a picture in which nothing but the view has changed, so that no shadows are drawn anew. */
async function calls({ scene }: Bench): Promise<number> {
  await pictures();
  scene.look('turn-left');
  await pictures();
  scene.look('turn-right');
  await pictures();
  return scene.stats().drawCalls;
}

/** Picture of a vertex, which must be in it. */
function screen({ scene }: Bench, v: number): { x: number; y: number; hidden: boolean } {
  const at = scene.screenOf(v);
  if (at === null) throw new Error(`vertex ${v} is behind the eye`);
  return at;
}

/** The edge of the topology between two vertices. */
function edge({ views }: Bench, v: number, w: number): number {
  const { edgeVertices } = views.sculpt;
  for (let e = 0; e < edgeVertices.length / 2; e += 1) {
    if (edgeVertices[2 * e] === Math.min(v, w) && edgeVertices[2 * e + 1] === Math.max(v, w)) return e;
  }
  throw new Error(`no edge ${v} ${w}`);
}

// A captured pointer needs a real one; the events here are made.
vi.spyOn(HTMLCanvasElement.prototype, 'setPointerCapture').mockImplementation(() => undefined);

/** One for all tests that only look at it: setting up a picture takes long in software. */
let bench: Bench;

beforeAll(async () => {
  bench = await makeBench();
});

beforeEach(async () => {
  const { scene } = bench;
  scene.setStage(0);
  scene.setEdgeTool(false);
  scene.setHighlight(null);
  scene.setSelection(null);
  await scene.settled();
  scene.look('front');
  scene.frame('sculpt');
  bench.hovers.length = bench.picks.length = 0;
  await pictures();
});

afterAll(() => {
  bench.scene.dispose();
  bench.canvas.remove();
});

describe('the bench', () => {
  it('draws a sculpt, its foam, sheets and the rule in few calls, and only when something changed', async () => {
    const { scene } = bench;
    // A picture that moved is fine again a moment later.
    await new Promise((resolve) => setTimeout(resolve, 300));
    const { drawCalls, triangles, frames } = scene.stats();
    expect(drawCalls).toBeGreaterThan(5);
    expect(drawCalls).toBeLessThan(30);
    expect(triangles).toBeGreaterThan(12);
    await new Promise((resolve) => setTimeout(resolve, 200));
    expect(scene.stats().frames).toBe(frames);
    scene.look('turn-left');
    await pictures();
    expect(scene.stats().frames).toBeGreaterThan(frames);
  });

  it('takes no more calls than these in each state, and none while nothing changes', async () => {
    const { scene } = bench;
    const taken: Record<string, number> = {};
    const take = async (state: string): Promise<void> => {
      await scene.atRest();
      taken[state] = await calls(bench);
      // A picture that moved is drawn finely once more, and then no other.
      await soon(async () => {
        const { frames } = scene.stats();
        for (let i = 0; i < 20; i += 1) await new Promise(requestAnimationFrame);
        expect(scene.stats().frames).toBe(frames);
      });
    };
    scene.setSheetTitles(['Sheet 1']);
    await take('whole');
    scene.setSelection({ pieces: [1] });
    await take('one chosen');
    scene.setSelection(null);
    scene.setPlane({ point: [50, 50, 50], normal: [0, 0, 1] });
    scene.setCutOpen(true);
    await take('cut open');
    scene.setCutOpen(false);
    scene.setPlane(null);
    for (const [stage, state] of ['', 'apart', 'flat', 'on the sheet'].entries()) {
      if (state === '') continue;
      scene.setStage(stage);
      await take(state);
    }
    scene.setSheetTitles([]);
    const most = { whole: 11, 'one chosen': 12, 'cut open': 22, apart: 13, flat: 14, 'on the sheet': 14 };
    for (const [state, bound] of Object.entries(most)) expect(taken[state], state).toBeLessThanOrEqual(bound);
  });

  it('finds the edge under the pointer while the edge tool is on', async () => {
    bench.scene.setEdgeTool(true);
    await pictures();
    // Seen from the front; corner numbers are x + 2 y + 4 z, and z = 100 is in front.
    for (const [v, w] of [
      [4, 5],
      [5, 7],
      [6, 7],
      [4, 6],
    ]) {
      const [a, b] = [screen(bench, v), screen(bench, w)];
      expect(a.hidden).toBe(false);
      // A few pixels towards the middle of the face.
      const [m, n] = [screen(bench, 4), screen(bench, 7)];
      const middle = { x: (m.x + n.x) / 2, y: (m.y + n.y) / 2 };
      const at = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
      const away = Math.hypot(middle.x - at.x, middle.y - at.y);
      const pick = await hover(bench, at.x + (5 * (middle.x - at.x)) / away, at.y + (5 * (middle.y - at.y)) / away);
      expect(pick).toMatchObject({ kind: 'edge', edge: edge(bench, v, w) });
      expect(pick?.seam).toBe(bench.views.seams.chainOfEdge[edge(bench, v, w)]);
    }
  });

  it('tells the place on the sculpt, its piece and its stretch', async () => {
    const [a, b] = [screen(bench, 4), screen(bench, 7)];
    const pick = await hover(bench, a.x + 0.25 * (b.x - a.x), a.y + 0.4 * (b.y - a.y));
    expect(pick?.kind).toBe('surface');
    const [x, y, z] = pick?.point ?? [0, 0, 0];
    expect(x).toBeCloseTo(25, -0.5);
    expect(y).toBeCloseTo(40, -0.5);
    expect(z).toBeCloseTo(100, 3);
    const patch = bench.views.pieces.patchOfTriangle[pick?.triangle ?? -1];
    expect(pick).toMatchObject({ piece: patch, stretchPct: patch, squashPct: 0 });
    expect(pick?.vertex).toBe(4);
    expect(screen(bench, 0).hidden).toBe(true);
  });

  it('tells a click from a turn of the view', async () => {
    const at = { x: SIZE.width / 2, y: SIZE.height / 2 };
    send(bench, 'pointerdown', at.x, at.y, { button: 0, shiftKey: true });
    send(bench, 'pointerup', at.x + 1, at.y, { button: 0, shiftKey: true });
    expect(bench.picks).toHaveLength(1);
    expect(bench.picks[0]).toMatchObject({ shift: true, alt: false, pick: { kind: 'surface' } });
    const before = screen(bench, 7);
    send(bench, 'pointerdown', at.x, at.y, { button: 0 });
    send(bench, 'pointermove', at.x + 80, at.y + 10, { button: 0 });
    send(bench, 'pointerup', at.x + 80, at.y + 10, { button: 0 });
    expect(bench.picks).toHaveLength(1);
    const after = screen(bench, 7);
    expect(Math.hypot(after.x - before.x, after.y - before.y)).toBeGreaterThan(8);
  });

  it('comes nearer to what is under the pointer and never goes through it', async () => {
    const at = screen(bench, 7);
    const wide = Math.abs(screen(bench, 5).y - at.y);
    for (let i = 0; i < 3; i += 1) {
      bench.canvas.dispatchEvent(
        new WheelEvent('wheel', { clientX: at.x, clientY: at.y + 2, deltaY: -120, bubbles: true }),
      );
    }
    const near = screen(bench, 7);
    expect(Math.hypot(near.x - at.x, near.y - at.y)).toBeLessThan(8);
    expect(Math.abs(screen(bench, 5).y - near.y)).toBeGreaterThan(1.3 * wide);
    for (let i = 0; i < 80; i += 1) {
      bench.canvas.dispatchEvent(
        new WheelEvent('wheel', { clientX: at.x, clientY: at.y, deltaY: -240, bubbles: true }),
      );
    }
    expect(bench.scene.screenOf(7)).not.toBeNull();
  });

  it('goes aside with two fingers on a trackpad, and a wheel comes nearer', async () => {
    const wheel = async (more: WheelEventInit): Promise<number> => {
      const from = [screen(bench, 0), screen(bench, 1)];
      bench.canvas.dispatchEvent(new WheelEvent('wheel', { clientX: 180, clientY: 120, bubbles: true, ...more }));
      await pictures();
      const to = [screen(bench, 0), screen(bench, 1)];
      const apart = ([a, b]: typeof from): number => Math.hypot(a.x - b.x, a.y - b.y);
      return apart(to) / apart(from);
    };
    expect(await wheel({ deltaY: -120 })).toBeGreaterThan(1.1);
    const before = screen(bench, 0).x;
    expect(await wheel({ deltaX: 24, deltaY: 3 })).toBeCloseTo(1, 1);
    expect(screen(bench, 0).x).toBeLessThan(before - 12);
    // A fast move of the same fingers is still theirs.
    expect(await wheel({ deltaY: 90 })).toBeCloseTo(1, 1);
    await new Promise((resolve) => setTimeout(resolve, 250));
  });

  it('turns with two fingers that turn', async () => {
    const finger = (type: string, pointerId: number, x: number, y: number): void =>
      send(bench, type, x, y, { pointerId, pointerType: 'touch' });
    const right = (): number[] => [...(bench.scene.facing([50, 50, 50])?.right ?? [])];
    const before = right();
    finger('pointerdown', 7, 130, 120);
    finger('pointerdown', 8, 230, 120);
    finger('pointermove', 8, 217, 155);
    finger('pointerup', 8, 217, 155);
    finger('pointerup', 7, 130, 120);
    await pictures();
    // By 22 degrees, of which moving aside takes or gives a few.
    const turn = Math.acos(right().reduce((sum, x, k) => sum + x * before[k], 0));
    expect(turn).toBeGreaterThan(0.3);
    expect(turn).toBeLessThan(0.5);
    expect(bench.picks).toHaveLength(0);
  });

  it('is nearer by a wheel of fine steps, and aside by fingers as fast as a wheel', async () => {
    const apart = (): number => Math.abs(screen(bench, 0).x - screen(bench, 1).x);
    const wheel = async (deltaY: number, wheelDeltaY: number): Promise<void> => {
      const told: WheelEventInit & { wheelDeltaY: number } = {
        clientX: 180,
        clientY: 120,
        bubbles: true,
        deltaY,
        wheelDeltaY,
      };
      bench.canvas.dispatchEvent(new WheelEvent('wheel', told));
      await pictures();
    };
    const before = apart();
    for (let i = 0; i < 8; i += 1) await wheel(-12.5, 15);
    expect(apart()).toBeGreaterThan(1.1 * before);
    const [near, { y }] = [apart(), screen(bench, 0)];
    await wheel(60, -180);
    expect(apart()).toBeCloseTo(near, -0.5);
    expect(screen(bench, 0).y).toBeLessThan(y - 40);
    await new Promise((resolve) => setTimeout(resolve, 250));
  });

  it('turns by one finger or a pen, and a pen lights what it is held over and moves by its side button', async () => {
    const right = (): number[] => [...(bench.scene.facing([50, 50, 50])?.right ?? [])];
    const turnedBy = (before: readonly number[]): number =>
      Math.acos(
        Math.min(
          1,
          right().reduce((sum, x, k) => sum + x * before[k], 0),
        ),
      );
    const drag = async (pointerType: string, buttons: number, button: number): Promise<void> => {
      const more = { pointerId: 9, pointerType, buttons, button };
      send(bench, 'pointerdown', 180, 120, more);
      send(bench, 'pointermove', 240, 120, { ...more, button: -1 });
      send(bench, 'pointerup', 240, 120, { ...more, buttons: 0 });
      await pictures();
    };
    for (const pointerType of ['touch', 'pen']) {
      const before = right();
      await drag(pointerType, 1, 0);
      // A quarter of the height of the picture is a quarter of half a turn.
      expect(turnedBy(before)).toBeCloseTo(Math.PI / 4, 0.5);
    }
    bench.scene.look('front');
    await pictures();
    const middle = {
      x: (screen(bench, 4).x + screen(bench, 7).x) / 2,
      y: (screen(bench, 4).y + screen(bench, 7).y) / 2,
    };
    send(bench, 'pointermove', middle.x, middle.y, { pointerType: 'pen', pointerId: 9 });
    await pictures();
    expect(bench.hovers.at(-1)).toMatchObject({ kind: 'surface' });
    for (const [buttons, button] of [
      [2, 2],
      // The tip is down already when its button is pressed.
      [3, 0],
    ]) {
      const [before, { x }] = [right(), screen(bench, 0)];
      await drag('pen', buttons, button);
      expect(screen(bench, 0).x).toBeGreaterThan(x + 30);
      expect(turnedBy(before)).toBeLessThan(0.2);
    }
    expect(bench.picks).toHaveLength(0);
    // A hand that trembles still taps.
    send(bench, 'pointerdown', 180, 120, { pointerType: 'pen', button: 0, buttons: 1 });
    send(bench, 'pointermove', 184, 124, { pointerType: 'pen', button: -1, buttons: 1 });
    send(bench, 'pointerup', 184, 124, { pointerType: 'pen', button: 0 });
    expect(bench.picks).toHaveLength(1);
  });

  it('comes nearer by two fingers that part, and moves by two that go together', async () => {
    const finger = (type: string, pointerId: number, x: number, y: number): void =>
      send(bench, type, x, y, { pointerId, pointerType: 'touch' });
    const apart = (): number => Math.abs(screen(bench, 4).x - screen(bench, 5).x);
    const [wide, { x }] = [apart(), screen(bench, 4)];
    finger('pointerdown', 7, 150, 120);
    finger('pointerdown', 8, 210, 120);
    finger('pointermove', 7, 120, 120);
    finger('pointermove', 8, 240, 120);
    await pictures();
    const near = apart();
    expect(near).toBeGreaterThan(1.5 * wide);
    for (let i = 1; i <= 4; i += 1) {
      finger('pointermove', 7, 120 + 10 * i, 120);
      finger('pointermove', 8, 240 + 10 * i, 120);
    }
    finger('pointerup', 7, 160, 120);
    finger('pointerup', 8, 280, 120);
    await pictures();
    expect(apart() / near).toBeCloseTo(1, 0.5);
    expect(screen(bench, 4).x).toBeGreaterThan(x - (near - wide) / 2 + 20);
    expect(bench.picks).toHaveLength(0);
  });

  it('comes to what is clicked twice, goes back from there, and turns by steps where motion is unwanted', async () => {
    const { scene, canvas } = bench;
    const side = (): number => Math.round(screen(bench, 0).x);
    const begin = side();
    const at = screen(bench, 0);
    canvas.dispatchEvent(new MouseEvent('dblclick', { clientX: 180, clientY: 120, bubbles: true }));
    await pictures();
    scene.look('return');
    await pictures();
    expect(side()).toBe(begin);
    scene.look('round');
    await pictures();
    expect(side()).not.toBe(begin);
    scene.look('front');
    await pictures();
    expect(screen(bench, 0).x).toBeCloseTo(at.x, 0);
  });

  it('brings the pieces off the sculpt and onto the sheet', async () => {
    const whole = screen(bench, 7);
    bench.scene.setStage(1);
    await bench.scene.settled();
    const apart = screen(bench, 7);
    expect(Math.hypot(apart.x - whole.x, apart.y - whole.y)).toBeGreaterThan(3);
    bench.scene.setStage(3);
    await bench.scene.settled();
    bench.scene.look('top');
    for (const piece of [0, 5]) {
      bench.scene.frame({ piece });
      await pictures();
      const pick = await hover(bench, SIZE.width / 2, SIZE.height / 2 + 20 + piece);
      expect(pick).toMatchObject({ kind: 'piece', piece });
      expect(bench.views.pieces.patchOfTriangle[pick?.triangle ?? -1]).toBe(piece);
    }
  });

  it('shows what is written on the sheets with the pieces on them, and finds a sheet by it', async () => {
    const { scene } = bench;
    expect(scene.titleOf(0)).toBeNull();
    scene.setSheetTitles(['Sheet 1, foam of 6 mm']);
    scene.setStage(3);
    await scene.settled();
    for (const what of ['pieces', { sheet: 0 }] as const) {
      // From the level of the bench nothing that lies on it is seen: it is looked at from higher.
      scene.look('front');
      scene.frame(what);
      await pictures();
      const { left, right, top, bottom, width, height } = scene.titleOf(0)!;
      expect(Math.min(left, top, SIZE.width - right, SIZE.height - bottom)).toBeGreaterThan(2);
      expect(Math.min(width / 8, height)).toBeGreaterThan(5);
      expect(await hover(bench, (left + right) / 2, (top + bottom) / 2)).toEqual({ kind: 'sheet', sheet: 0 });
    }
    scene.setSheetTitles([]);
  });

  it('finds the sheet between the pieces', async () => {
    bench.scene.look('top');
    bench.scene.frame('all');
    await pictures();
    const found = new Set<string>();
    for (let y = 12; y < SIZE.height; y += 20) found.add((await hover(bench, SIZE.width / 2 - 4, y))?.kind ?? '');
    expect(found).toContain('sheet');
    expect(bench.hovers.find(({ kind }) => kind === 'sheet')?.sheet).toBe(0);
  });

  it('joins the two edges of a seam with threads when they are apart', async () => {
    const whole = await calls(bench);
    bench.scene.setHighlight({ seams: [0] });
    expect(await calls(bench)).toBe(whole + 1);
    bench.scene.setHighlight(null);
    bench.scene.setStage(1);
    await bench.scene.settled();
    const apart = await calls(bench);
    bench.scene.setHighlight({ seams: [0] });
    expect(await calls(bench)).toBe(apart + 2);
  });

  it('points out pieces, edges, triangles, vertices and places, and forgives numbers that are gone', async () => {
    const { scene } = bench;
    const plain = await calls(bench);
    scene.setSelection({ pieces: [1], triangles: [0, 1], vertices: [7], point: [50, 50, 100] });
    scene.setPreviewEdges([0, 1]);
    scene.setCursorVertex(7);
    expect(await calls(bench)).toBe(plain + 5);
    scene.setSelection({ pieces: [99], seams: [99], edges: [9999], triangles: [9999], vertices: [9999] });
    scene.setPreviewEdges(null);
    scene.setCursorVertex(null);
    expect(await calls(bench)).toBe(plain);
  });

  it('takes all colourings, familiar things and up axes, and gives a picture', async () => {
    const { scene } = bench;
    for (const kind of ['stretch', 'pieces', 'plain'] as const) scene.setColouring(kind);
    for (const thing of ['hand', 'head', 'door', 'none'] as const) scene.setFamiliar(thing);
    for (const axis of ['x', 'z', 'y'] as const) {
      scene.setUpAxis(axis);
      await scene.settled();
    }
    const blob = await scene.snapshot();
    expect(blob.type).toBe('image/png');
    expect(blob.size).toBeGreaterThan(2000);
  });

  it('goes on with what is left when records are taken away', async () => {
    const { scene, views } = bench;
    scene.setStage(2.5);
    scene.show({ pieces: null, sheets: null });
    await scene.settled();
    scene.show({ shell: null, seams: null });
    await scene.settled();
    scene.show({ sculpt: null });
    await scene.settled();
    expect(scene.screenOf(0)).toBeNull();
    scene.show(views);
    await scene.settled();
    expect(scene.screenOf(0)).not.toBeNull();
  });

  it('tells when the picture is lost and draws again when it is back', async () => {
    const context = bench.canvas.getContext('webgl2');
    const loser = context?.getExtension('WEBGL_lose_context');
    if (!loser) throw new Error('this browser cannot lose a context on purpose');
    loser.loseContext();
    await soon(() => expect(bench.lost).toEqual(['lost']));
    bench.scene.setStage(1);
    await bench.scene.settled();
    loser.restoreContext();
    await soon(() => expect(bench.lost).toEqual(['lost', 'restored']));
    const { frames } = bench.scene.stats();
    bench.scene.look('turn-right');
    await pictures();
    expect(bench.scene.stats().frames).toBeGreaterThan(frames);
  });
});

it('drags a plane in hand instead of turning the view, and tells where it is let go', async () => {
  const { scene, planes } = bench;
  scene.setPlane({ point: [50, 60, 50], normal: [0, 1, 0] });
  await pictures();
  // The frame's right front corner, where the arrow stands, is seen a little beyond the box's.
  const corner = screen(bench, 5);
  scene.look('right');
  scene.look('front');
  for (let dy = -140; dy <= 40 && planes.length === 0; dy += 3) {
    send(bench, 'pointerdown', corner.x + 12, corner.y + dy, { button: 0 });
    send(bench, 'pointermove', corner.x + 12, corner.y + dy - 8, { button: 0 });
    send(bench, 'pointermove', corner.x + 12, corner.y + dy - 20, { button: 0 });
    await pictures();
    send(bench, 'pointerup', corner.x + 12, corner.y + dy - 20, { button: 0 });
    await pictures();
  }
  expect(planes.at(-1)?.isDone).toBe(true);
  expect(planes.at(-1)?.plane.point[1]).toBeGreaterThan(60);
  scene.setPlane(null);
});

it('says so where 3D is missing', () => {
  const canvas = makeCanvas();
  vi.spyOn(canvas, 'getContext').mockReturnValue(null);
  const silent = {
    onHover: () => undefined,
    onPick: () => undefined,
    onGrab: () => false,
    onDrag: () => undefined,
    onDrop: () => undefined,
    onPlane: () => undefined,
    onSection: () => undefined,
    onDrawn: () => undefined,
    onContextLost: () => undefined,
    onContextRestored: () => undefined,
  };
  expect(() => new BenchScene(canvas, silent)).toThrow(NoWebGl);
  canvas.remove();
});
