import type * as pdfjs from 'pdfjs-dist/legacy/build/pdf.mjs';
import { QUIET_WORK, type Work } from '../../base/work.ts';

/** A page of a PDF as an independent reader sees it; lengths in points of 1/72 inch as the page counts them, y up from its lower edge. */
export interface ReadPage {
  readonly widthPt: number;
  readonly heightPt: number;
  /** What one point of the page counts for: 1, unless the file says otherwise (ISO 32000-1, 14.11.2, UserUnit). */
  readonly userUnit: number;
  /** Degrees by which a viewer turns the page. */
  readonly turnDeg: number;
  readonly paths: readonly ReadPath[];
  readonly texts: readonly {
    readonly text: string;
    readonly xPt: number;
    readonly yPt: number;
    readonly sizePt: number;
    readonly widthPt: number;
  }[];
}

export interface ReadPath {
  /** Packed x, y, pt. */
  readonly points: readonly number[];
  readonly closed: boolean;
  /** Name of the layer it lies on, or null. */
  readonly layer: string | null;
  readonly widthPt: number;
  /** Dash pattern, pt; empty for a solid line. */
  readonly dashPt: readonly number[];
  /** Red of the line's colour, 0 to 255. */
  readonly grey: number;
}

export interface ReadPdf {
  readonly pages: readonly ReadPage[];
  readonly layers: readonly string[];
  /** The list beside the pages: title and page, counted from 0. */
  readonly bookmarks: readonly { readonly title: string; readonly page: number }[];
  readonly preferences: Readonly<Record<string, unknown>>;
  readonly info: Readonly<Record<string, unknown>>;
}

type Library = typeof pdfjs;
type Ops = Library['OPS'];
type Matrix = readonly number[];

/**
 * Reads pages, lines, words, layers and print wishes of a PDF with a library that has no part in writing it. Loaded when it is first needed.
 * It pauses after the lines and after the words of each page.
 * @throws Error for what is no PDF, and for a path of other than straight lines: no paper of ours has one.
 */
export async function readPdf(bytes: Uint8Array, work: Work = QUIET_WORK): Promise<ReadPdf> {
  const { getDocument, OPS } = await library();
  await work.pause(0);
  const task = getDocument({
    data: bytes.slice(),
    verbosity: 0,
    useSystemFonts: false,
    disableFontFace: true,
    isEvalSupported: false,
  });
  try {
    const doc = await task.promise;
    const config = await doc.getOptionalContentConfig();
    const names = new Map<string, string>();
    for (const [id, group] of Object.entries((config.getGroups() ?? {}) as Record<string, { name: string }>))
      names.set(id, group.name);
    const pages: ReadPage[] = [];
    for (let i = 1; i <= doc.numPages; i += 1) {
      const page = await doc.getPage(i);
      const [x0, y0, x1, y1] = page.view;
      const list = await page.getOperatorList();
      await work.pause((i - 1) / doc.numPages);
      const content = await page.getTextContent();
      const texts = content.items.flatMap((item) =>
        'str' in item && item.str !== ''
          ? [
              {
                text: item.str,
                xPt: item.transform[4] as number,
                yPt: item.transform[5] as number,
                sizePt: item.height,
                widthPt: item.width,
              },
            ]
          : [],
      );
      const paths = pathsOf(OPS, list, names);
      const { userUnit, rotate: turnDeg } = page;
      pages.push({ widthPt: x1 - x0, heightPt: y1 - y0, userUnit, turnDeg, paths, texts });
      page.cleanup();
      await work.pause(i / doc.numPages);
    }
    const bookmarks: { title: string; page: number }[] = [];
    for (const { title, dest } of (await doc.getOutline()) ?? []) {
      if (!Array.isArray(dest)) throw new Error(`bookmark ${title} leads nowhere`);
      bookmarks.push({ title, page: await doc.getPageIndex(dest[0] as Parameters<typeof doc.getPageIndex>[0]) });
    }
    const preferences = ((await doc.getViewerPreferences()) ?? {}) as Record<string, unknown>;
    const { info } = await doc.getMetadata();
    return { pages, layers: [...names.values()], bookmarks, preferences, info: info as Record<string, unknown> };
  } finally {
    await task.destroy();
  }
}

/** The reader with its own worker's code beside it: where we read is a worker already, or the command line. */
async function library(): Promise<Library> {
  const [reader, worker] = await Promise.all([
    import('pdfjs-dist/legacy/build/pdf.mjs'),
    import('pdfjs-dist/legacy/build/pdf.worker.mjs'),
  ]);
  (globalThis as { pdfjsWorker?: unknown }).pdfjsWorker ??= worker;
  return reader;
}

function pathsOf(
  OPS: Ops,
  list: { fnArray: number[]; argsArray: unknown[] },
  names: ReadonlyMap<string, string>,
): ReadPath[] {
  const paths: ReadPath[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  let widthPt = 1;
  let dashPt: readonly number[] = [];
  let grey = 0;
  const saved: { matrix: Matrix; widthPt: number }[] = [];
  const marked: (string | null)[] = [];
  list.fnArray.forEach((fn, i) => {
    const args = list.argsArray[i] as never[];
    if (fn === OPS.save) saved.push({ matrix, widthPt });
    else if (fn === OPS.restore) ({ matrix, widthPt } = saved.pop() ?? { matrix, widthPt });
    else if (fn === OPS.transform) matrix = times(matrix, args);
    else if (fn === OPS.setLineWidth) widthPt = args[0];
    else if (fn === OPS.setDash) dashPt = [...(args[0] as Iterable<number>)];
    else if (fn === OPS.setStrokeRGBColor) grey = args[0];
    else if (fn === OPS.beginMarkedContentProps) marked.push(layerName(args, names));
    else if (fn === OPS.beginMarkedContent) marked.push(null);
    else if (fn === OPS.endMarkedContent) marked.pop();
    else if (fn === OPS.constructPath) {
      const layer = marked.findLast((name) => name !== null) ?? null;
      for (const { points, closed, goesOn } of subpaths(OPS, args[0], args[1])) {
        const own = { points: moved(points, matrix), closed, layer, widthPt, dashPt, grey };
        // The reader hands on long contents in parts, and a part may end inside a path.
        const before = goesOn ? paths.pop() : undefined;
        paths.push(before === undefined ? own : { ...before, points: [...before.points, ...own.points], closed });
      }
    }
  });
  return paths;
}

function layerName(args: readonly unknown[], names: ReadonlyMap<string, string>): string | null {
  const group = args[1] as { id?: string } | null;
  return args[0] === 'OC' && group?.id !== undefined ? (names.get(group.id) ?? null) : null;
}

interface Subpath {
  points: number[];
  closed: boolean;
  /** True for what goes on with the path before. */
  readonly goesOn: boolean;
}

function subpaths(OPS: Ops, ops: readonly number[], numbers: readonly number[]): readonly Subpath[] {
  const found: Subpath[] = [];
  const last = (): Subpath => {
    if (found.length === 0) found.push({ points: [], closed: false, goesOn: true });
    return found[found.length - 1];
  };
  let at = 0;
  for (const op of ops) {
    if (op === OPS.moveTo) found.push({ points: [numbers[at++], numbers[at++]], closed: false, goesOn: false });
    else if (op === OPS.lineTo) last().points.push(numbers[at++], numbers[at++]);
    else if (op === OPS.closePath) last().closed = true;
    else if (op === OPS.rectangle) {
      const [x, y, width, height] = [numbers[at++], numbers[at++], numbers[at++], numbers[at++]];
      const points = [x, y, x + width, y, x + width, y + height, x, y + height];
      found.push({ points, closed: true, goesOn: false });
    } else throw new Error(`readPdf: operator ${op} in a path`);
  }
  return found;
}

const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

const moved = (points: readonly number[], m: Matrix): number[] =>
  points.map((_, i) =>
    i % 2 === 0 ? m[0] * points[i] + m[2] * points[i + 1] + m[4] : m[1] * points[i - 1] + m[3] * points[i] + m[5],
  );
