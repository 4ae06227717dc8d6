import { contentHash } from '../base/hash.ts';
import type { FoamId } from '../base/ids.ts';
import { ok, type Result } from '../base/result.ts';
import { spokenName } from '../base/spoken-name.ts';
import { IN_PLACE } from '../geom/matrix4.ts';
import { chainRing } from '../geom/outline.ts';
import { vec3 } from '../geom/vec.ts';
import { boxOfPoints3 } from '../mesh/measure.ts';
import type { BuildUpWish, SideLine } from '../model/build-up.ts';
import type { PlainDraft } from '../model/plain-piece.ts';
import type { SizeField } from '../model/shape-size.ts';
import { USUAL_ARTWORK } from '../pipeline/artwork.ts';
import { buildUpOf, knownPipes } from '../pipeline/build-up.ts';
import { USUAL_PICTURE } from '../pipeline/picture-artwork.ts';
import { shapeInFoam } from '../pipeline/plain/shape-part.ts';
import { ALL_SHAPES, findShape, shapeFrom } from '../pipeline/shapes.ts';
import type { ArtworkFields } from '../project/artwork-part.ts';
import { nameFromFile } from '../project/new-project.ts';
import type { StackFields } from '../project/stack-part.ts';
import { sourceFormat } from '../pipeline/source-format.ts';
import type { Source } from '../pipeline/sculpt-stage.ts';
import { readSizes } from '../steps/shapes/read-sizes.ts';
import { shapeWork } from '../steps/shapes/shape-work.ts';
import type { ShapeKind } from '../steps/shapes/shape-kind.ts';
import type {
  FilePart,
  PartsAsking,
  PipeOffer,
  ShapeAsk,
  ShapeOffer,
  ToldOfSize,
  TriedPiece,
  TriedShape,
} from './parts-api.ts';

/** How finely curves are drawn on the screen, mm. */
const DRAWN_MM = 0.05;

const NOTHING: TriedShape = { pieces: [], figures: [], told: [], box: null };

/** Answers about parts that are not in the project yet. */
export class PartsDesk implements PartsAsking {
  #offers: readonly ShapeOffer[] | null = null;
  readonly #keep: (hash: string, source: Source) => void;

  /** @param keep  keeps a file under the hash of its bytes. */
  constructor(keep: (hash: string, source: Source) => void) {
    this.#keep = keep;
  }

  shapes(): Promise<readonly ShapeOffer[]> {
    this.#offers ??= ALL_SHAPES.filter(hasPieces).map(({ name, also = [], says, sizes }) => ({
      name,
      also,
      says,
      sizes,
    }));
    return Promise.resolve(this.#offers);
  }

  tryShape(ask: ShapeAsk): Promise<TriedShape> {
    return Promise.resolve(tried(ask));
  }

  pipes(): Promise<readonly PipeOffer[]> {
    return Promise.resolve(knownPipes().map(({ name, material, outsideMm }) => ({ name, material, outsideMm })));
  }

  coreSide(wish: BuildUpWish): Promise<readonly SideLine[]> {
    const made = buildUpOf(wish);
    return Promise.resolve(made.ok ? made.value.sideView : []);
  }

  async keepFile(bytes: Uint8Array, fileName: string): Promise<string> {
    const hash = await contentHash(bytes);
    this.#keep(hash, { fileName, bytes });
    return hash;
  }

  async partFromFile(bytes: Uint8Array, fileName: string, foam: FoamId): Promise<Result<FilePart>> {
    const source = { hash: await contentHash(bytes), fileName };
    const made = fieldsOf(bytes, fileName);
    if (!made.ok) return made;
    this.#keep(source.hash, { fileName, bytes });
    const base = { name: nameFromFile(fileName), transform: IN_PLACE, copies: 1, foams: [foam], source };
    return ok({ ...base, ...made.value });
  }
}

/** What is done with a file: all of it as usual. */
function fieldsOf(bytes: Uint8Array, fileName: string): Result<ArtworkFields | StackFields> {
  if (/\.svg$/i.test(fileName))
    return ok({ kind: 'artwork', drawing: { from: 'svg', choice: USUAL_ARTWORK }, craft: { kind: 'cut' } });
  if (/\.(png|jpe?g)$/i.test(fileName))
    return ok({ kind: 'artwork', drawing: { from: 'picture', choice: USUAL_PICTURE }, craft: { kind: 'cut' } });
  const format = sourceFormat(bytes, fileName);
  if (!format.ok) return format;
  // Files come with that way up as sculpts do.
  const axis = format.value === 'stl' ? vec3(0, 0, 1) : vec3(0, 1, 0);
  return ok({ kind: 'stack', wish: { axis, rule: 'larger', seat: 'bottom' } });
}

/** Figures of the trade have none. */
function hasPieces({ name }: ShapeKind): boolean {
  const made = shapeFrom(name, []);
  return !made.ok || made.value.pieces.length > 0;
}

function tried({ shape, sizes, foam }: ShapeAsk): TriedShape {
  const kind = findShape(shape);
  if (!kind.ok) return { ...NOTHING, told: [{ severity: 'error', text: kind.problem.text, size: null }] };
  const fields = kind.value.sizes;
  // Each by itself, so that every one that cannot be read is told, and beside its own field.
  const unread = Object.entries(sizes).flatMap(([name, text]): ToldOfSize[] => {
    const read = readSizes(kind.value, [[name, text]]);
    return read.ok ? [] : [{ severity: 'error', text: spoken(read.problem.text, fields), size: name }];
  });
  if (unread.length > 0) return { ...NOTHING, told: unread };
  const made = shapeInFoam({ shape, sizes }, foam);
  if (!made.ok) return { ...NOTHING, told: [told('error', made.problem.text, fields)] };
  const work = shapeWork(made.value, foam);
  return {
    pieces: work.pieces.map(triedPiece),
    figures: made.value.measures,
    told: [...work.findings, ...made.notes].map(({ severity, text }) => told(severity, text, fields)),
    box: work.form === null ? null : boxOfPoints3(work.form.positions),
  };
}

const triedPiece = ({ name, quantity, areaMm2, outline, holes, lines }: PlainDraft): TriedPiece => ({
  name,
  quantity,
  areaMm2,
  rings: [outline, ...holes].map((edges) =>
    chainRing(
      edges.flatMap(({ segments }) => segments),
      DRAWN_MM,
    ),
  ),
  lines,
});

const told = (severity: ToldOfSize['severity'], text: string, fields: readonly SizeField[]): ToldOfSize => ({
  severity,
  text: spoken(text, fields),
  size: sizeNamed(text, fields),
});

/** The size a sentence is about: the first it names; null where it names none. */
export function sizeNamed(text: string, fields: readonly SizeField[]): string | null {
  const found = fields.flatMap(({ name }) => {
    const at = new RegExp(`\\b(${name}|${spokenName(name)})\\b`).exec(text)?.index;
    return at === undefined ? [] : [{ name, at }];
  });
  // Of names that begin at one place the longest is meant.
  found.sort((one, other) => one.at - other.at || other.name.length - one.name.length);
  return found.at(0)?.name ?? null;
}

/** Names with `_` as they are spoken. */
const spoken = (text: string, fields: readonly SizeField[]): string =>
  fields.reduce((said, { name }) => (name.includes('_') ? said.replaceAll(name, spokenName(name)) : said), text);
