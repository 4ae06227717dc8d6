import type { Locator, Page } from 'playwright-core';
import type { App } from '../../src/app/app.ts';
import type { Stage } from '../../src/app/stage.ts';
import type { OpenApp } from '../support/browser.ts';
import { WAIT_MS } from '../support/time-limits.ts';

/** Longest wait for a result. */
export const LONG = { timeout: WAIT_MS };

/** What the window has in hand, read from its properties. */
export interface BenchFacts {
  readonly name: string;
  readonly revision: number;
  readonly sized: boolean;
  readonly heightMm: number;
  readonly seamEdges: number;
  readonly pieces: readonly {
    readonly id: string;
    readonly number: number;
    readonly thicknessMm: number;
    readonly areaMm2: number;
  }[];
  readonly pages: readonly { readonly widthMm: number; readonly heightMm: number; readonly kind: string }[];
  readonly stretchMaxPct: number;
  readonly findings: readonly string[];
  readonly choice: string;
  readonly tool: string;
  readonly stage: number;
  readonly notice: string;
}

/** Waits until the window has worked out the document in force; fails when it gave up. */
export async function settled(page: Page): Promise<void> {
  const outcome = await page.waitForFunction(
    () => {
      const bench = document.querySelector<App>('fl-app')?.workbench;
      if (bench === undefined || bench.project === null || bench.reading !== null || bench.progress !== null)
        return null;
      return bench.isStale ? (bench.notice?.text ?? null) : 'done';
    },
    null,
    LONG,
  );
  const text = await outcome.jsonValue();
  if (text !== 'done') throw new Error(`the window gave up: ${String(text)}`);
}

/** Waits for a first picture of the bench that stands still, or its flat stand-in. */
export async function staged(page: Page): Promise<void> {
  await page.waitForFunction(
    async () => {
      const stage = document.querySelector('fl-app')?.shadowRoot?.querySelector<Stage>('fl-stage');
      if (stage == null) return false;
      await stage.settled();
      return (stage.stats?.frames ?? 0) > 0 || stage.shadowRoot?.querySelector('fl-flat-bench') != null;
    },
    null,
    LONG,
  );
}

export async function factsOf(page: Page): Promise<BenchFacts> {
  return await page.evaluate(() => {
    const app = document.querySelector<App>('fl-app');
    if (app === null) throw new Error('no fl-app');
    const { bench, project, part, view, notice } = app.workbench;
    const box = bench.sculpt?.facts.boxSize ?? [0, 0, 0];
    return {
      name: project?.name ?? '',
      revision: project?.revision ?? 0,
      sized: bench.sculpt?.sized ?? false,
      heightMm: box[1] * (bench.sculpt?.mmPerUnit ?? 1),
      seamEdges: part?.seams.edges.length ?? 0,
      pieces: (bench.pieces?.pieces ?? []).map(({ id, number, thicknessMm, areaMm2 }) => ({
        id,
        number,
        thicknessMm,
        areaMm2,
      })),
      pages: (bench.paper?.pages ?? []).map(({ widthMm, heightMm, kind }) => ({ widthMm, heightMm, kind })),
      stretchMaxPct: Math.max(0, ...(bench.pieces?.patches ?? []).map((patch) => patch.stretchSpread?.max ?? 0)),
      findings: bench.findings.map((finding) => finding.code),
      choice: view.choice.kind,
      tool: view.tool,
      stage: view.stage,
      notice: notice?.text ?? '',
    };
  });
}

/** Waits until the facts are as wanted, and gives them; on failure tells what they were. */
export async function until(page: Page, what: string, isSo: (facts: BenchFacts) => boolean): Promise<BenchFacts> {
  const end = Date.now() + LONG.timeout;
  for (;;) {
    await settled(page);
    const facts = await factsOf(page);
    if (isSo(facts)) return facts;
    if (Date.now() > end) throw new Error(`never so: ${what}; last: ${JSON.stringify(facts)}`);
    await page.waitForTimeout(50);
  }
}

/** A button of the job sheet or the stage by the words on it. */
export const button = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name }).first();

/** Lets go of a file over the window, as a drag from the desktop does. */
export async function dropFile(page: Page, name: string, text: string): Promise<void> {
  const data = await page.evaluateHandle(
    ([fileName, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content], fileName));
      return transfer;
    },
    [name, text],
  );
  await page.dispatchEvent('fl-app', 'dragover', { dataTransfer: data });
  await page.dispatchEvent('fl-app', 'drop', { dataTransfer: data });
}

/** Ends of an edge of the sculpt in the page, CSS px; null where the bench is not drawn in 3D. */
export async function edgeOnScreen(page: Page, edge: number): Promise<{ x: number; y: number } | null> {
  return await page.evaluate((index) => {
    const app = document.querySelector<App>('fl-app');
    const stage = app?.shadowRoot?.querySelector<Stage>('fl-stage');
    const ends = app?.workbench.bench.sculpt?.edgeVertices;
    if (stage == null || ends === undefined) return null;
    const box = stage.getBoundingClientRect();
    const [a, b] = [stage.screenOf(ends[2 * index]), stage.screenOf(ends[2 * index + 1])];
    return a === null || b === null ? null : { x: box.x + (a.x + b.x) / 2, y: box.y + (a.y + b.y) / 2 };
  }, edge);
}

/** Folded edges of the sculpt that are not parted yet and run into its rim: parted, each is a dart. */
export async function dartEdges(page: Page): Promise<number[]> {
  return await page.evaluate(() => {
    const { sculpt, seams } = document.querySelector<App>('fl-app')!.workbench.bench;
    if (sculpt === null) return [];
    const { edgeFoldRad, edgeIsOpen, edgeVertices: ends } = sculpt;
    const edges = [...edgeFoldRad.keys()];
    const rim = new Set(edges.filter((e) => edgeIsOpen[e] === 1).flatMap((e) => [ends[2 * e], ends[2 * e + 1]]));
    return edges.filter(
      (e) =>
        Math.abs(edgeFoldRad[e]) > 0.5 &&
        edgeIsOpen[e] === 0 &&
        (seams?.chainOfEdge[e] ?? -1) < 0 &&
        (rim.has(ends[2 * e]) || rim.has(ends[2 * e + 1])),
    );
  });
}

/** Moves the pointer to a folded edge that lights up as the one to part. @returns the edge. */
export async function hoverDart(page: Page): Promise<number> {
  for (const edge of await dartEdges(page)) {
    const at = await edgeOnScreen(page, edge);
    if (at === null) continue;
    await page.mouse.move(at.x + 8, at.y + 8);
    await page.mouse.move(at.x, at.y, { steps: 3 });
    const isLit = await page
      .waitForFunction((e) => document.querySelector('fl-app')?.workbench.view.preview?.[0] === e, edge, {
        timeout: 10_000,
      })
      .then(() => true)
      .catch(() => false);
    if (isLit) return edge;
  }
  throw new Error('no folded edge of the sculpt lights up under the pointer');
}

/** Faults of the window that no test may leave behind. */
export function faultsOf(app: OpenApp): readonly string[] {
  return [...app.consoleErrors, ...app.requestsOutside()];
}
