import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import type { LengthField } from '../../src/app/length-field.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { LEGEND_WORDS } from '../../src/app/legend/legend-words.ts';
import { WORDS } from '../../src/app/words.ts';
import { axeFaults, findIn, openTrayApp, restedApp } from './app-element.ts';

let app: App;
let workbench: Workbench;

beforeEach(async () => {
  ({ app, workbench } = await openTrayApp());
  await rested();
});

afterEach(() => {
  app.remove();
});

const inWear = <T extends HTMLElement = HTMLElement>(...path: string[]): T =>
  findIn<T>(app, 'fl-job-sheet', 'fl-fit-line', 'fl-wear-group', ...path);
const textOf = (element: Node): string => (element.textContent ?? '').replace(/\s+/g, ' ').trim();

/** Fields of a tape stand four elements deep, and each waits for its turn. */
async function rested(): Promise<void> {
  for (let i = 0; i < 3; i += 1) await restedApp(app);
}

function button(root: HTMLElement, name: string | RegExp): HTMLButtonElement {
  const found = [...root.shadowRoot!.querySelectorAll('button')].find((one) => textOf(one).match(name));
  if (found === undefined) throw new Error(`no button ${name}`);
  return found;
}

async function type(root: HTMLElement, label: string, text: string): Promise<void> {
  const field = [...root.shadowRoot!.querySelectorAll<LengthField>('fl-length-field')].find(
    (one) => one.label === label,
  );
  const input = field!.shadowRoot!.querySelector('input')!;
  await userEvent.fill(input, text);
  await userEvent.keyboard('{Tab}');
  await rested();
}

async function layTape(): Promise<HTMLElement> {
  inWear('summary').click();
  button(inWear(), WORDS.wear.addTape).click();
  await rested();
  return inWear('fl-tape-fields');
}

const tapes = () => workbench.bench.bodyFit?.tapes ?? [];

describe('a tape in the window', () => {
  it('says what the foam leaves, sizes the part to the body in one step, and takes it back', async () => {
    const tape = await layTape();
    expect(tapes()).toHaveLength(1);
    expect(textOf(tape.shadowRoot!.querySelector('.figure')!)).toMatch(/^Girth inside the foam: [\d.]+ mm, .* in$/);
    await type(tape, WORDS.wear.bodyGirth, '1000');
    await type(tape, WORDS.wear.ease, '2 cm');
    expect(tapes()[0].tape).toMatchObject({ bodyGirthMm: 1000, easeMm: 20 });
    const before = workbench.part?.scale;
    button(tape, /size the part/).click();
    await rested();
    expect(tapes()[0].back?.girthMm).toBeCloseTo(1020, 6);
    expect(textOf(tape.shadowRoot!)).toContain(WORDS.wear.sized);
    workbench.undo();
    await rested();
    expect(workbench.part?.scale).toEqual(before);
  });

  it('moves the foam off the sculpt so that it fits, takes a way inward, and takes both back', async () => {
    const tape = await layTape();
    await type(tape, WORDS.wear.bodyGirth, '300');
    const out = workbench.bench.bodyFit?.tapes[0].moveMm ?? 0;
    button(tape, /move the foam/).click();
    await rested();
    expect(workbench.part?.offMm).toBeCloseTo(out, 9);
    expect(tapes()[0].back?.girthMm).toBeCloseTo(300, 6);
    await type(inWear(), WORDS.wear.off, '-2,5 mm');
    expect(workbench.part?.offMm).toBe(-2.5);
    workbench.undo();
    workbench.undo();
    await rested();
    expect(workbench.part?.offMm).toBeUndefined();
  });

  it('is moved by the arrow keys and drawn on the bench while it is pointed at', async () => {
    const tape = await layTape();
    const slider = tape.shadowRoot!.querySelector<HTMLInputElement>('input[type=range]')!;
    const before = workbench.part!.tapes![0].pointInFile;
    slider.focus();
    expect(workbench.view.pointed?.rings).toHaveLength(2);
    await userEvent.keyboard('{ArrowRight}{ArrowRight}');
    await rested();
    expect(workbench.part!.tapes![0].pointInFile).not.toEqual(before);
    expect(workbench.view.pointed?.rings?.[0]).toBe(tapes()[0].face?.hull);
    slider.blur();
    expect(workbench.view.pointed).toBeNull();
    workbench.undo();
    expect(workbench.part!.tapes![0].pointInFile).toEqual(before);
  });

  it('lists openings once something must pass, with the caution beside it, and goes away', async () => {
    const tape = await layTape();
    await type(inWear('fl-pass-fields'), WORDS.wear.passGirth, '5000');
    expect(textOf(inWear('fl-pass-fields', 'li'))).toContain(WORDS.wear.passesNot);
    expect(workbench.bench.findings.some(({ code }) => code === 'wear/does-not-go-on')).toBe(true);
    expect(textOf(inWear('fl-cautions', 'summary'))).toContain(WORDS.wear.caution);
    const pass = inWear('fl-pass-fields').shadowRoot!;
    pass.querySelector<HTMLInputElement>('input[type=checkbox]')!.click();
    await rested();
    expect(workbench.bench.findings.some(({ code }) => code === 'wear/no-sight')).toBe(true);
    const use = pass.querySelector('select')!;
    use.value = 'sight';
    use.dispatchEvent(new Event('change'));
    await rested();
    expect(workbench.bench.findings.some(({ code }) => code === 'wear/no-sight')).toBe(false);
    expect(workbench.bench.bodyFit?.puttingOn?.openings[0].use).toBe('sight');
    button(tape, /remove/).click();
    await rested();
    expect(tapes()).toEqual([]);
  });
});

it('puts a joint in, bends it by what is typed, and says where it cannot', async () => {
  inWear('summary').click();
  button(inWear(), WORDS.wear.addJoint).click();
  await rested();
  const fields = inWear('fl-joint-fields').shadowRoot!;
  expect(textOf(fields)).toContain(WORDS.wear.noBend);
  const bend = fields.querySelector<HTMLInputElement>('input[type=text]')!;
  const say = async (text: string): Promise<void> => {
    bend.value = text;
    bend.dispatchEvent(new Event('change'));
    await rested();
  };
  await say('−120');
  expect(workbench.part?.joints?.[0].bendDeg).toBe(-120);
  await say('0');
  expect(textOf(fields)).toContain(WORDS.wear.bendWrong(170));
  expect(workbench.part?.joints?.[0].bendDeg).toBe(-120);
  const [, side] = fields.querySelectorAll('select');
  side.value = 'x -1';
  side.dispatchEvent(new Event('change'));
  await rested();
  expect(workbench.part?.joints?.[0].towards).toEqual([-1, 0, 0]);
});

it('puts a core in and says what room it has', async () => {
  inWear('summary').click();
  button(inWear(), WORDS.wear.addCore).click();
  await rested();
  await type(inWear('fl-core-fields'), WORDS.wear.diameter, '20');
  expect(workbench.bench.bodyFit?.cores[0].core).toMatchObject({ diameterMm: 20 });
  const before = workbench.bench.bodyFit?.cores[0].tightest?.clearanceMm;
  inWear('fl-core-fields', 'input[type=range]').focus();
  await userEvent.keyboard('{Home}');
  await rested();
  expect(workbench.bench.bodyFit?.cores[0].tightest?.clearanceMm).not.toBe(before);
  expect(await axeFaults(app)).toEqual([]);
});

it('shows the room round a core in colours, with the figure at the place pointed at', async () => {
  inWear('summary').click();
  expect(workbench.bench.room).toBeNull();
  button(inWear(), WORDS.wear.addCore).click();
  await rested();
  await type(inWear('fl-core-fields'), WORDS.wear.wanted, '8');
  findIn(app, 'fl-job-sheet', 'fl-fit-line', 'fl-colour-choice', 'input[aria-keyshortcuts=Q]').click();
  await rested();
  expect(workbench.view).toMatchObject({ colouring: 'room', look: 'back' });
  const field = workbench.bench.room!;
  expect(field).toMatchObject({ limitMm: 16, wantedMm: 8 });
  const vertex = field.atVertices.findIndex((mm) => !Number.isNaN(mm));
  workbench.setView({ under: { vertex, triangle: 0 } });
  await rested();
  const legend = findIn(app, 'fl-legend');
  expect(textOf(legend.shadowRoot!)).toContain('here');
  expect(await axeFaults(app)).toEqual([]);
  workbench.undo();
  workbench.undo();
  await rested();
  expect(workbench.bench.room).toBeNull();
  workbench.setView({ under: null });
  await rested();
  expect(textOf(legend.shadowRoot!)).toContain(LEGEND_WORDS.noCore);
});

it('puts a model in as a core, tells how it stands, and takes it out again', async () => {
  inWear('summary').click();
  const text = 'v 0 0 0\nv 9 0 0\nv 0 9 0\nv 0 0 9\nf 1 3 2\nf 1 2 4\nf 2 3 4\nf 3 1 4\n';
  const input = inWear<HTMLInputElement>('#core-file');
  const files = new DataTransfer();
  files.items.add(new File([text], 'arm.obj'));
  input.files = files.files;
  input.dispatchEvent(new Event('change'));
  await expect.poll(() => workbench.part?.core?.length).toBe(1);
  await rested();
  expect(workbench.part?.core?.[0]).toMatchObject({ kind: 'model', name: 'arm', unit: 'sculpt' });
  expect(textOf(inWear('fl-core-fields').shadowRoot!)).toContain(WORDS.wear.coreFile('arm.obj'));
  expect(workbench.bench.bodyFit?.cores[0]).toMatchObject({ openEdges: 0 });
  expect(workbench.bench.room).not.toBeNull();
  await type(inWear('fl-core-fields'), WORDS.wear.wanted, '7');
  expect(workbench.part?.core?.[0].roomMm).toBe(7);
  expect(await axeFaults(app)).toEqual([]);
  workbench.undo();
  workbench.undo();
  expect(workbench.part?.core ?? []).toEqual([]);
});

it('has no fault for who cannot see or point', async () => {
  await layTape();
  await type(inWear('fl-pass-fields'), WORDS.wear.passGirth, '100');
  expect(await axeFaults(app)).toEqual([]);
});
