import type { Finding } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { shownText } from '../../base/shown-text.ts';
import { composed, readTransform, type Affine } from '../../geom/affine.ts';
import { readSvgLength } from '../../geom/svg-size.ts';
import { readXml, type XmlElement } from '../../geom/xml-text.ts';
import type { ArtDrawing, ArtPath, ArtSegment, ArtShape, ArtStroke } from '../../model/artwork.ts';
import { basicShape } from './basic-shapes.ts';
import { readPathData } from './path-data.ts';
import { mappedPath } from './segments.ts';
import { FIRST_STYLE, isByReference, isPainted, ownProperty, styleWithin, type ArtStyle } from './style.ts';
import { StyleSheet } from './style-sheet.ts';
import { fitViewBox, MM_PER_PX, readViewBox, userLength, type Viewport } from './view-box.ts';

/** Longer than any drawing of outlines, characters. */
const MOST_TEXT = 20_000_000;
/** Elements drawn, copies counted each time: copies of copies can stand for billions. */
const MOST_DRAWN = 100_000;
/** Copies within copies. */
const MOST_COPIES = 64;
/** Exact parts of all lines. */
const MOST_SEGMENTS = 300_000;
/** Wider than any foam, mm: a wrong unit or a broken number. */
const MOST_MM = 100_000;

const GROUPS = new Set(['g', 'a', 'svg', 'switch']);
const SHAPES = new Set(['path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon']);
/** Draw nothing where they stand, and nobody misses them. */
const SILENT = new Set(
  'defs symbol clipPath mask marker pattern linearGradient radialGradient filter style metadata title desc script view'.split(
    ' ',
  ),
);
const WRITING = new Set(['text', 'tspan', 'textPath', 'tref', 'altGlyph']);

/** What is said once of a drawing: how often, and the names of the first few. */
interface Told {
  count: number;
  readonly names: string[];
}

type Kind = 'hidden' | 'text' | 'image' | 'gradient' | 'clip' | 'unit' | 'copy' | 'sheet' | 'other' | 'marker';

const SENTENCES: Readonly<Record<Kind, readonly [code: string, text: string]>> = {
  hidden: ['artwork/hidden', 'is hidden and left out: show it and save again if it is to be cut.'],
  text: ['artwork/text', 'is writing and left out: turn text into paths first.'],
  image: ['artwork/image', 'is a picture and left out: trace it, or draw its outline as a path.'],
  gradient: ['artwork/gradient', 'is filled with a blend or a pattern: it is read as a plain fill.'],
  clip: ['artwork/clip', 'is clipped or masked: it is read whole. Cut the paths themselves in the drawing.'],
  unit: ['artwork/length', 'has sizes or points that cannot be read and is left out: draw it as a path.'],
  copy: ['artwork/copy', 'is a copy of something that is not in the file and is left out: put it into the drawing.'],
  sheet: ['artwork/style-sheet', 'of its style sheet cannot be read: save it with styles as attributes.'],
  marker: ['artwork/marker', 'has marks at its ends, which are left out: draw them as paths.'],
  other: ['artwork/left-out', 'is of a kind that has no outline and is left out: draw it as a path.'],
};

/** Names told in one sentence. */
const MOST_NAMES = 5;

interface Around {
  readonly mmFromUser: Affine;
  readonly style: ArtStyle;
  readonly viewport: Viewport;
  /** Number of the piece, or null outside of all. */
  readonly piece: number | null;
  /** Ids of the copies being drawn. */
  readonly copies: readonly string[];
}

/**
 * Reads an SVG file as shapes in mm: all basic shapes and paths through transforms, frames and copies, each with the piece it belongs to. The
 * outermost group that holds a shape is a piece, and so is each shape outside of such groups. What is left out is told.
 * @returns fails with `artwork/…` or `xml/…`, each telling what to do.
 */
export function collectShapes(text: string): Result<ArtDrawing> {
  if (text.trim() === '') return fail('artwork/empty', 'The file is empty: save the drawing again as SVG.');
  if (text.length > MOST_TEXT)
    return fail('artwork/too-large', 'The file is over 20 MB: save the outlines alone, without pictures.');
  const xml = readXml(text);
  if (!xml.ok) return xml;
  const [name, prefix] = nameOf(xml.value);
  if (name !== 'svg')
    return fail('artwork/not-svg', `The file is XML but no drawing: it begins with ${name}, not svg.`);
  const collector = new Collector(prefix);
  collector.index(xml.value);
  return collector.collect(xml.value);
}

class Collector {
  readonly #prefix: string;
  readonly #byId = new Map<string, XmlElement>();
  readonly #sheet = new StyleSheet();
  readonly #shapes: ArtShape[] = [];
  readonly #pieces: string[] = [];
  readonly #told = new Map<Kind, Told>();
  readonly #counts = new Map<string, number>();
  #drawn = 0;
  #segments = 0;

  constructor(prefix: string) {
    this.#prefix = prefix;
  }

  /** Finds ids and style sheets. Nesting is bounded by the reader of XML. */
  index(element: XmlElement): void {
    const id = element.attributes.get('id');
    if (id !== undefined && !this.#byId.has(id)) this.#byId.set(id, element);
    if (this.#localName(element) === 'style') this.#sheet.add(element.text ?? '');
    for (const child of element.children) this.index(child);
  }

  collect(root: XmlElement): Result<ArtDrawing> {
    const { mmFromUser, viewport, hasUnits } = frameOf(root);
    const style = styleWithin(FIRST_STYLE, this.#sheet.dressed(root, 'svg'));
    const problem = this.#children(root, { mmFromUser, style, viewport, piece: null, copies: [] });
    if (problem !== null) return problem;
    if (this.#shapes.length === 0)
      return fail(
        'artwork/no-lines',
        this.#told.has('text')
          ? 'The drawing has no lines, only writing: turn text into paths first.'
          : 'The drawing has no lines: draw outlines as paths and save it again.',
      );
    if (this.#sheet.unread > 0) this.#tell('sheet', `${this.#sheet.unread} selectors`);
    const notes = [...(hasUnits ? [] : [NO_UNIT]), ...this.#notes()];
    return ok({ shapes: this.#shapes, pieces: unique(this.#pieces), mmFromUser }, notes);
  }

  #notes(): Finding[] {
    return [...this.#told].map(([kind, { count, names }]) => {
      const [code, text] = SENTENCES[kind];
      const more = count > names.length ? ` and ${count - names.length} more` : '';
      return {
        code,
        severity: kind === 'gradient' ? 'note' : 'warning',
        text: `${names.join(', ')}${more} ${text}`,
        where: {},
      };
    });
  }

  #tell(kind: Kind, name: string): void {
    const told = this.#told.get(kind) ?? { count: 0, names: [] };
    told.count += 1;
    if (told.names.length < MOST_NAMES) told.names.push(name);
    this.#told.set(kind, told);
  }

  /** @returns null when all went well. */
  #children(parent: XmlElement, around: Around): Result<never> | null {
    for (const child of parent.children) {
      const problem = this.#element(child, around);
      if (problem !== null) return problem;
      if (this.#localName(parent) === 'switch') break;
    }
    return null;
  }

  #element(given: XmlElement, around: Around): Result<never> | null {
    const name = this.#localName(given);
    if (name === null || SILENT.has(name)) return null;
    this.#drawn += 1;
    if (this.#drawn > MOST_DRAWN)
      return fail(
        'artwork/too-large',
        `The drawing comes to more than ${MOST_DRAWN} parts, copies counted: simplify it.`,
      );
    const element = this.#sheet.dressed(given, name);
    const called = this.#called(element, name);
    if (ownProperty(element, 'display') === 'none') {
      this.#tell('hidden', called);
      return null;
    }
    const own = readTransform(ownTransform(element));
    if (own === null)
      return fail(
        'artwork/transform',
        `The transform of ${called} cannot be read: apply it in the drawing, or save it again as plain SVG.`,
      );
    for (const clip of ['clip-path', 'mask'])
      if (!['', 'none'].includes(ownProperty(element, clip))) this.#tell('clip', called);
    const inside: Around = {
      ...around,
      mmFromUser: composed(around.mmFromUser, own),
      style: styleWithin(around.style, element),
    };
    if (GROUPS.has(name)) return this.#group(element, name, called, inside);
    if (name === 'use') return this.#copy(element, called, inside);
    if (SHAPES.has(name)) return this.#shape(element, name, called, inside);
    this.#tell(WRITING.has(name) ? 'text' : name === 'image' || name === 'foreignObject' ? 'image' : 'other', called);
    return null;
  }

  #group(element: XmlElement, name: string, called: string, around: Around): Result<never> | null {
    const framed = name === 'svg' ? innerFrame(element, around, {}) : around;
    if (framed === null) return null;
    const isPiece = around.piece === null && name !== 'svg' && element.children.some((child) => this.#isDrawn(child));
    return this.#children(element, isPiece ? { ...framed, piece: this.#newPiece(called) } : framed);
  }

  #isDrawn(element: XmlElement): boolean {
    const name = this.#localName(element);
    return name !== null && (SHAPES.has(name) || name === 'use');
  }

  #copy(element: XmlElement, called: string, around: Around): Result<never> | null {
    const link = [...element.attributes].find(([key]) => key === 'href' || key.endsWith(':href'))?.[1].trim() ?? '';
    const id = link.startsWith('#') ? link.slice(1) : '';
    const target = this.#byId.get(id);
    const [x, y] = (['x', 'y'] as const).map(
      (key) => userLength(element.attributes.get(key), key, around.viewport) ?? 0,
    );
    if (target === undefined) {
      this.#tell('copy', called);
      return null;
    }
    if (around.copies.includes(id))
      return fail('artwork/cycle', `${called} is a copy that holds itself: put the shape in its place.`);
    if (around.copies.length >= MOST_COPIES)
      return fail(
        'artwork/too-large',
        `Copies are nested more than ${MOST_COPIES} deep: put the shapes in their place.`,
      );
    const inside: Around = {
      ...around,
      mmFromUser: composed(around.mmFromUser, [1, 0, 0, 1, x, y]),
      copies: [...around.copies, id],
      piece:
        around.piece ??
        this.#newPiece(hasName(element) ? called : this.#called(target, this.#localName(target) ?? 'copy')),
    };
    const name = this.#localName(target);
    if (name !== 'symbol' && name !== 'svg') return this.#element(target, inside);
    const own = readTransform(ownTransform(target));
    const turned = own === null ? inside : { ...inside, mmFromUser: composed(inside.mmFromUser, own) };
    const sizes = { width: element.attributes.get('width'), height: element.attributes.get('height') };
    const dressed = this.#sheet.dressed(target, name);
    const framed = innerFrame(target, { ...turned, style: styleWithin(inside.style, dressed) }, sizes);
    return framed === null ? null : this.#children(target, framed);
  }

  #shape(element: XmlElement, name: string, called: string, around: Around): Result<never> | null {
    const { style, viewport, mmFromUser } = around;
    if (['hidden', 'collapse'].includes(style.visibility)) {
      this.#tell('hidden', called);
      return null;
    }
    let paths: readonly ArtPath[];
    if (name === 'path') {
      const read = readPathData(ownPathData(element));
      if (!read.ok) return fail(read.problem.code, `${called}: ${read.problem.text}`);
      paths = read.value;
    } else {
      const read = basicShape(name, element.attributes, viewport);
      if ('unfit' in read) {
        this.#tell('unit', called);
        return null;
      }
      paths = read;
    }
    if (paths.length === 0) return null;
    const [a, b, c, d] = mmFromUser;
    const scale = Math.sqrt(Math.abs(a * d - b * c));
    const inMm = paths.map((path) => mappedPath(mmFromUser, path));
    this.#segments += paths.reduce((sum, { segments }) => sum + segments.length, 0);
    if (this.#segments > MOST_SEGMENTS)
      return fail(
        'artwork/too-large',
        `The drawing has more than ${MOST_SEGMENTS} parts of lines: simplify its paths.`,
      );
    if (!inMm.every(({ segments }) => segments.every(isOnPage)))
      return fail('artwork/numbers', `${called} is over 100 m away or broken: save the drawing with the right unit.`);
    if (isByReference(style.fill) || isByReference(style.stroke)) this.#tell('gradient', called);
    if (['marker-start', 'marker-mid', 'marker-end'].some((key) => !['', 'none'].includes(ownProperty(element, key))))
      this.#tell('marker', called);
    // A line that is neither filled nor stroked is often meant for a cutter: it is kept as a line without width.
    this.#shapes.push({
      name: called,
      piece: around.piece ?? this.#newPiece(called),
      paths: inMm,
      fill:
        isPainted(style.fill) && name !== 'line' ? (style['fill-rule'] === 'evenodd' ? 'evenodd' : 'nonzero') : null,
      stroke: isPainted(style.stroke) ? strokeOf(style, viewport, scale) : null,
    });
    return null;
  }

  #newPiece(name: string): number {
    this.#pieces.push(name);
    return this.#pieces.length - 1;
  }

  /** Its title, label or id, else what it is and which of its kind. */
  #called(element: XmlElement, kind: string): string {
    const named = ownName(element);
    if (named !== null) return named;
    const count = (this.#counts.get(kind) ?? 0) + 1;
    this.#counts.set(kind, count);
    return `${kind === 'g' ? 'group' : kind} ${count}`;
  }

  #localName(element: XmlElement): string | null {
    const [name, prefix] = nameOf(element);
    return prefix === this.#prefix ? name : null;
  }
}

const NO_UNIT: Finding = {
  code: 'artwork/no-unit',
  severity: 'note',
  text: 'The file names no unit of length, so its numbers are taken as px, 96 to the inch: give the true width to be sure.',
  where: {},
};

function isOnPage(segment: ArtSegment): boolean {
  const points = [segment.from, segment.to];
  if (segment.kind === 'cubic') points.push(...segment.handles);
  if (segment.kind === 'arc') points.push(segment.centre, segment.u, segment.v);
  return points.every(({ x, y }) => Math.abs(x) <= MOST_MM && Math.abs(y) <= MOST_MM);
}

/** `d` as an attribute, or as the property `path("…")`. */
function ownPathData(element: XmlElement): string {
  const d = ownProperty(element, 'd');
  return /^path\(\s*(["'])([\s\S]*)\1\s*\)$/.exec(d)?.[2] ?? d;
}

/** The attribute alone: within `style` it is of another grammar. */
const ownTransform = ({ attributes }: XmlElement): string => {
  const text = attributes.get('transform') ?? '';
  return text.trim() === 'none' ? '' : text;
};

function strokeOf(style: ArtStyle, viewport: Viewport, scale: number): ArtStroke {
  const width = userLength(style['stroke-width'], 'both', viewport) ?? 1;
  const [cap, corner] = [style['stroke-linecap'], style['stroke-linejoin']];
  const limit = Number(style['stroke-miterlimit']);
  return {
    widthMm: Math.max(0, width) * scale,
    cap: cap === 'round' || cap === 'square' ? cap : 'butt',
    corner: corner === 'round' || corner === 'bevel' ? corner : 'miter',
    miterLimit: limit >= 1 ? limit : 4,
  };
}

/** Longest name taken over, characters. */
const MOST_NAME = 80;

function ownName({ attributes, children }: XmlElement): string | null {
  const title = children.find((child) => nameOf(child)[0] === 'title')?.text;
  const label = [...attributes].find(([key]) => key.endsWith(':label'))?.[1];
  const name = [title, label, attributes.get('id')].find((one) => one !== undefined && one.trim() !== '');
  return name === undefined ? null : shownText(name.trim().replace(/\s+/g, ' ').slice(0, MOST_NAME));
}

const hasName = (element: XmlElement): boolean => ownName(element) !== null;

/** Names, a second one alike with a number behind. */
function unique(names: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    let one = name;
    for (let i = 2; taken.has(one); i += 1) one = `${name} ${i}`;
    taken.add(one);
    return one;
  });
}

/** The name without its prefix, and the prefix. */
function nameOf({ name }: XmlElement): [name: string, prefix: string] {
  const colon = name.indexOf(':');
  return [name.slice(colon + 1), name.slice(0, Math.max(0, colon))];
}

/** What a frame without sizes has (CSS 2.1, chapter 10.3.2), px. */
const USUAL_FRAME: Viewport = { width: 300, height: 150 };

/** The outermost frame in mm, y up, its lower left corner at the origin. */
function frameOf({ attributes }: XmlElement): { mmFromUser: Affine; viewport: Viewport; hasUnits: boolean } {
  const box = readViewBox(attributes.get('viewBox'));
  const sizes = (['width', 'height'] as const).map((key) => {
    const length = readSvgLength(attributes.get(key) ?? '');
    return length === null || !(length.value > 0) ? null : length;
  });
  const px = sizes.map((one) => (one === null ? null : (one.value * (one.mmPerUnit ?? MM_PER_PX)) / MM_PER_PX));
  const hasUnits = sizes.some((one) => one !== null && one.mmPerUnit !== null);
  const width = px[0] ?? (box === null ? USUAL_FRAME.width : px[1] === null ? box[2] : (px[1] * box[2]) / box[3]);
  const height = px[1] ?? (box === null ? USUAL_FRAME.height : px[0] === null ? box[3] : (px[0] * box[3]) / box[2]);
  const pageFromPx: Affine = [MM_PER_PX, 0, 0, -MM_PER_PX, 0, height * MM_PER_PX];
  if (box === null) return { mmFromUser: pageFromPx, viewport: { width, height }, hasUnits };
  const fit = fitViewBox(box, attributes.get('preserveAspectRatio'), { width, height });
  return { mmFromUser: composed(pageFromPx, fit), viewport: { width: box[2], height: box[3] }, hasUnits };
}

/** A frame within: of a nested drawing or of a symbol. Null where it has no size and so draws nothing. */
function innerFrame(
  { attributes }: XmlElement,
  around: Around,
  given: { readonly width?: string | undefined; readonly height?: string | undefined },
): Around | null {
  const length = (key: 'width' | 'height', along: 'x' | 'y'): number => {
    const text = given[key] ?? attributes.get(key) ?? '100%';
    return userLength(text === 'auto' ? '100%' : text, along, around.viewport) ?? around.viewport[key];
  };
  const [width, height] = [length('width', 'x'), length('height', 'y')];
  if (!(width > 0 && height > 0)) return null;
  const [x, y] = (['x', 'y'] as const).map((key) => userLength(attributes.get(key), key, around.viewport) ?? 0);
  const moved = composed(around.mmFromUser, [1, 0, 0, 1, x, y]);
  const box = readViewBox(attributes.get('viewBox'));
  if (box === null) return { ...around, mmFromUser: moved, viewport: { width, height } };
  const fit = fitViewBox(box, attributes.get('preserveAspectRatio'), { width, height });
  return { ...around, mmFromUser: composed(moved, fit), viewport: { width: box[2], height: box[3] } };
}
