import type { Finding } from '../base/finding.ts';
import { fail, ok, type Result } from '../base/result.ts';
import { composed, greatestScale, mapped, readTransform, type Affine } from './affine.ts';
import { readSvgPath, type Stroke } from './svg-path.ts';
import { readUserLength, svgScale } from './svg-size.ts';
import type { Vec2 } from './vec.ts';
import { readXml, type XmlElement } from './xml-text.ts';

/** A drawing in its true size, mm, y up, its middle at the origin. */
export interface FlatDrawing {
  readonly strokes: readonly Stroke[];
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A unit of a drawing that would be longer, mm, leaves no tolerance that is a number. */
const LARGEST_SCALE = 1e305;
/** Farther from its origin sums and means of places are no numbers any more, mm. */
const FARTHEST_MM = 1e305;

const beyondMeasure = (): Result<never> =>
  fail('drawing/numbers', 'A number in the drawing is beyond all measure: save it again as plain SVG.');

/** Longer than any drawing of seams, characters. */
const MOST_TEXT = 20_000_000;
/** More corners than a sculpt can be cut along in good time. */
const MOST_POINTS = 20_000;
/** Wider than any sheet of foam, mm: a wrong unit. */
const MOST_MM = 100_000;

/** Elements that hold others, and those that draw nothing by themselves. */
const GROUPS = new Set(['g', 'a', 'switch']);
const SILENT = new Set(
  'defs symbol clipPath mask marker pattern linearGradient radialGradient filter style metadata title desc script view'.split(
    ' ',
  ),
);
/** What is told by name when it is left out. */
const LEFT_OUT: ReadonlyMap<string, string> = new Map([
  ['text', 'writing'],
  ['image', 'pictures'],
  ['use', 'copies of a symbol'],
  ['svg', 'drawings within the drawing'],
  ['foreignObject', 'foreign parts'],
]);

/**
 * Reads an SVG file as strokes: paths, lines, polylines, polygons, rectangles, circles and ellipses, through all transforms. What else is in it is
 * left out and told.
 * @param toleranceMm  how far a curve may be from its straight pieces, > 0.
 * @returns with notes `drawing/no-unit`, `drawing/fills` and `drawing/left-out`. Fails with `drawing/…`, `xml/…` or `path/…`, each telling what to do.
 */
export function readSvgDrawing(text: string, toleranceMm: number): Result<FlatDrawing> {
  if (text.trim() === '') return fail('drawing/empty', 'The file is empty: save the drawing again as SVG.');
  if (text.length > MOST_TEXT)
    return fail('drawing/too-large', 'The file is over 20 MB: save the outlines alone, without pictures.');
  const xml = readXml(text);
  if (!xml.ok) return xml;
  const [name, prefix] = nameOf(xml.value);
  if (name !== 'svg')
    return fail('drawing/not-svg', `The file is XML but no drawing: it begins with ${name}, not svg.`);
  const { mmFromUser, hasUnits } = svgScale(xml.value.attributes);
  const reader = new DrawingReader(prefix, toleranceMm);
  const problem = reader.readIn(xml.value, mmFromUser);
  if (problem !== null) return problem;
  if (reader.strokes.length === 0)
    return fail('drawing/no-lines', 'The drawing has no lines: turn writing and symbols into paths and save it again.');
  const notes = [...(hasUnits ? [] : [NO_UNIT]), ...reader.notes()];
  return centred(reader.strokes, notes);
}

const note = (code: string, text: string): Finding => ({ code, severity: 'note', text, where: {} });

const NO_UNIT = note(
  'drawing/no-unit',
  'The file names no unit, so its numbers are taken as mm: set the size if it is another.',
);

function centred(strokes: readonly Stroke[], notes: readonly Finding[]): Result<FlatDrawing> {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of strokes.flatMap(({ points }) => points)) {
    [left, right, low, high] = [Math.min(left, x), Math.max(right, x), Math.min(low, y), Math.max(high, y)];
  }
  const [widthMm, heightMm] = [right - left, high - low];
  if (!(Math.max(widthMm, heightMm) <= MOST_MM))
    return fail('drawing/too-large', 'The drawing is wider than 100 m: save it with the right unit.');
  const [x, y] = [(left + right) / 2, (low + high) / 2];
  const moved = strokes.map(({ points, closed }) => ({
    points: points.map((p) => ({ x: p.x - x, y: p.y - y })),
    closed,
  }));
  return ok({ strokes: moved, widthMm, heightMm }, notes);
}

class DrawingReader {
  readonly strokes: Stroke[] = [];
  readonly #prefix: string;
  readonly #toleranceMm: number;
  readonly #left = new Set<string>();
  #hasFills = false;
  #points = 0;

  constructor(prefix: string, toleranceMm: number) {
    this.#prefix = prefix;
    this.#toleranceMm = toleranceMm;
  }

  notes(): Finding[] {
    const list = [...this.#left].sort().join(', ');
    return [
      ...(this.#hasFills ? [note('drawing/fills', 'Outlines are laid, fills are not.')] : []),
      ...(list === ''
        ? []
        : [note('drawing/left-out', `Left out of the drawing: ${list}. Turn into paths what is to be a seam.`)]),
    ];
  }

  /** @returns null when all went well. XML is nested no deeper than its reader allows. */
  readIn(parent: XmlElement, outer: Affine): Result<never> | null {
    for (const child of parent.children) {
      const [name, prefix] = nameOf(child);
      if (prefix !== this.#prefix || SILENT.has(name)) continue;
      if (isHidden(child)) {
        this.#left.add('hidden parts');
        continue;
      }
      this.#hasFills ||= hasFill(child);
      const own = readTransform(child.attributes.get('transform') ?? '');
      if (own === null)
        return fail(
          'drawing/transform',
          `The transform “${(child.attributes.get('transform') ?? '').slice(0, 40)}” cannot be read: save the drawing again as plain SVG.`,
        );
      const mmFromUser = composed(outer, own);
      const problem = GROUPS.has(name) ? this.readIn(child, mmFromUser) : this.#shape(child, name, mmFromUser);
      if (problem !== null) return problem;
    }
    return null;
  }

  #shape({ attributes }: XmlElement, name: string, mmFromUser: Affine): Result<never> | null {
    const path = pathOf(name, attributes);
    if (path === null) this.#left.add(LEFT_OUT.get(name) ?? `<${name}>`);
    const scale = greatestScale(mmFromUser);
    if (path === null || path === '' || scale === 0) return null;
    if (!(scale < LARGEST_SCALE)) return beyondMeasure();
    const read = readSvgPath(path, this.#toleranceMm / scale);
    if (!read.ok) return read;
    for (const { points, closed } of read.value) {
      // The reader of paths has turned y up already; transforms are written for y down.
      const inMm = points.map(({ x, y }) => turnedUp(mapped(mmFromUser, { x, y: -y })));
      if (!inMm.every(({ x, y }) => Math.abs(x) < FARTHEST_MM && Math.abs(y) < FARTHEST_MM)) return beyondMeasure();
      this.strokes.push({ points: inMm, closed });
      this.#points += inMm.length;
    }
    if (this.#points <= MOST_POINTS) return null;
    return fail(
      'drawing/too-fine',
      `The drawing has more than ${MOST_POINTS} corners: simplify its paths, or lay it in parts.`,
    );
  }
}

const turnedUp = ({ x, y }: Vec2): Vec2 => ({ x, y: 0 - y });

/** A shape as the text of a path; empty where it draws nothing, null where it is of another kind or its sizes cannot be told. */
function pathOf(name: string, attributes: ReadonlyMap<string, string>): string | null {
  const text = (key: string): string => attributes.get(key) ?? '';
  const sizes = (...keys: string[]): number[] | null => {
    const all = keys.map((key) => readUserLength(attributes.get(key)));
    return all.every((one) => one !== null) ? all : null;
  };
  switch (name) {
    case 'path':
      return text('d');
    case 'polyline':
    case 'polygon':
      return text('points').trim() === '' ? '' : `M ${text('points')} ${name === 'polygon' ? 'Z' : ''}`;
    case 'line': {
      const ends = sizes('x1', 'y1', 'x2', 'y2');
      return ends === null ? null : `M ${ends.join(' ')}`;
    }
    case 'circle': {
      const round = sizes('cx', 'cy', 'r');
      return round === null ? null : ellipse(round[0], round[1], round[2], round[2]);
    }
    case 'ellipse': {
      const round = sizes('cx', 'cy', 'rx', 'ry');
      return round === null ? null : ellipse(round[0], round[1], round[2], round[3]);
    }
    case 'rect': {
      const box = sizes('x', 'y', 'width', 'height');
      const rx = readUserLength(attributes.get('rx') ?? attributes.get('ry'));
      const ry = readUserLength(attributes.get('ry') ?? attributes.get('rx'));
      return box === null || rx === null || ry === null ? null : rectangle(box, rx, ry);
    }
    default:
      return null;
  }
}

const ellipse = (x: number, y: number, rx: number, ry: number): string =>
  rx > 0 && ry > 0 ? `M ${x - rx} ${y} A ${rx} ${ry} 0 1 1 ${x + rx} ${y} A ${rx} ${ry} 0 1 1 ${x - rx} ${y} Z` : '';

function rectangle([x, y, width, height]: readonly number[], rx: number, ry: number): string {
  if (!(width > 0 && height > 0)) return '';
  const [a, b] = [Math.min(Math.max(0, rx), width / 2), Math.min(Math.max(0, ry), height / 2)];
  if (a === 0 || b === 0) return `M ${x} ${y} h ${width} v ${height} h ${-width} Z`;
  const round = `a ${a} ${b} 0 0 1`;
  const [w, h] = [width - 2 * a, height - 2 * b];
  return `M ${x + a} ${y} h ${w} ${round} ${a} ${b} v ${h} ${round} ${-a} ${b} h ${-w} ${round} ${-a} ${-b} v ${-h} ${round} ${a} ${-b} Z`;
}

/** The name without its prefix, and the prefix. */
function nameOf({ name }: XmlElement): [name: string, prefix: string] {
  const colon = name.indexOf(':');
  return [name.slice(colon + 1), name.slice(0, Math.max(0, colon))];
}

/** A property as an attribute or within `style`. */
function styled({ attributes }: XmlElement, property: string): string {
  const within = new RegExp(`(?:^|;)\\s*${property}\\s*:\\s*([^;]*)`).exec(attributes.get('style') ?? '');
  return (within?.[1] ?? attributes.get(property) ?? '').trim();
}

const isHidden = (element: XmlElement): boolean =>
  styled(element, 'display') === 'none' || /^(hidden|collapse)$/.test(styled(element, 'visibility'));

const hasFill = (element: XmlElement): boolean => !['', 'none', 'inherit'].includes(styled(element, 'fill'));
