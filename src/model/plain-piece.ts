import type { Finding } from '../base/finding.ts';
import { leansText, settingText, SQUARE_DEG, wholeDeg } from '../base/lean-words.ts';
import type { FoamId, PartId } from '../base/ids.ts';
import { chainGap } from '../geom/outline.ts';
import type { Ring } from '../geom/ring.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { CutThing, FoamStrip } from './foam-strip.ts';
import type { ShapeBend, ShapeEdge } from './shape.ts';
import type { LineRole } from './template.ts';

/**
 * A piece that no sculpt was parted for, as the step that made it gives it: of a shape, a stack, artwork, what is built up on a core, or a trim. It
 * has no number and no foam yet. All coordinates are mm, seen from the face, y up, in a frame of its own.
 */
export interface PlainDraft {
  /** Its own within its part and the same as long as its meaning stays: `layer-3`, `gore`. Becomes part of the piece's id. */
  readonly key: string;
  readonly name: string;
  /** How many the part needs, 1 or more. */
  readonly quantity: number;
  readonly thicknessMm: number;
  /**
   * Where between back (0) and face (1) the outline is the edge of the foam: 1 where it is drawn on the face, the neutral fraction where the piece is
   * bent. Bevels lean about it.
   */
  readonly drawnAt: number;
  /** Counter-clockwise round the piece, in its exact parts. */
  readonly outline: readonly ShapeEdge[];
  /** Clockwise, each. */
  readonly holes: readonly (readonly ShapeEdge[])[];
  readonly bend: ShapeBend;
  /** Folds, grooves, placing lines, engraving, marks. */
  readonly lines: readonly PlainLine[];
  /** Sentences printed on its paper under its title, most needed first. */
  readonly notes: readonly string[];
  /** Inside the outline less the holes, mm². */
  readonly areaMm2: number;
  /** How the sheet's length is to lie on it, radians counter-clockwise from +x; left out where it may lie anyhow. */
  readonly grainRad?: number;
}

/** A line on a piece that is not its outline. `text` stands beside it where there is room. */
export interface PlainLine {
  readonly role: LineRole;
  readonly points: Float64Array;
  readonly closed: boolean;
  readonly text?: string;
}

/**
 * What is done: roll, fold and form bring a piece into its form; close glues a piece to itself, join two pieces; stack, wrap, wind and lay glue one
 * flat on another; slide puts it on a core; insert puts in what is not foam; sand, fill, engrave and clay finish the form.
 */
export type PlainWorkKind =
  | 'roll'
  | 'fold'
  | 'form'
  | 'close'
  | 'join'
  | 'stack'
  | 'wrap'
  | 'wind'
  | 'lay'
  | 'slide'
  | 'insert'
  | 'sand'
  | 'fill'
  | 'engrave'
  | 'clay';

/** One step of the work on a part, in its order. */
export interface PlainStep {
  readonly work: PlainWorkKind;
  /** Keys of the pieces that are taken up. */
  readonly pieces: readonly string[];
  /** One sentence that says what to do, with its figures. */
  readonly text: string;
  /** Both faces that are brushed with glue, together, mm²; 0 where none is. */
  readonly glueMm2: number;
  /** Ids of the cautions that belong beside it (`shared/cautions.json`). */
  readonly cautions: readonly string[];
}

/** All that a part comes to which no sculpt was parted for. */
export interface PlainWork {
  readonly pieces: readonly PlainDraft[];
  readonly steps: readonly PlainStep[];
  readonly findings: readonly Finding[];
  /** The finished part in its own frame, mm, closed where it is solid; null where it has no form of its own. For the bench and for what meets it. */
  readonly form: Mesh | null;
}

/** Such a piece with its number and its foam, traced on its face. */
export interface PlainPiece extends CutThing {
  readonly part: PartId;
  readonly foam: FoamId;
  readonly draft: PlainDraft;
  /** The line to cut on the face: outer ring counter-clockwise, then holes clockwise, mm, in the draft's frame. */
  readonly faceRings: readonly Ring[];
  /** The same on the back; the very same rings where all edges are square. */
  readonly backRings: readonly Ring[];
  /** Of one, inside the face's outline less its holes, mm². */
  readonly areaMm2: number;
}

/** What is cut beside the pieces of sculpts: strips for their seams first, then the pieces of all other parts. */
export type CutBeside = FoamStrip | PlainPiece;

/** True for a piece that no sculpt was parted for. */
export const isPlain = <T extends object>(piece: T | PlainPiece): piece is PlainPiece => 'draft' in piece;

/** @throws Error on a broken draft: not closed, a figure that is none, a quantity under 1. */
export function checkPlainDraft({ key, quantity, thicknessMm, drawnAt, outline, holes, areaMm2 }: PlainDraft): void {
  const wrong = (what: string): never => {
    throw new Error(`plain piece ${key}: ${what}`);
  };
  if (!(Number.isInteger(quantity) && quantity >= 1)) wrong(`quantity ${quantity}`);
  if (!(thicknessMm > 0 && Number.isFinite(thicknessMm))) wrong(`thickness ${thicknessMm}`);
  if (!(drawnAt >= 0 && drawnAt <= 1)) wrong(`drawn at ${drawnAt}`);
  if (!(areaMm2 > 0 && Number.isFinite(areaMm2))) wrong(`area ${areaMm2}`);
  for (const ring of [outline, ...holes]) {
    const segments = ring.flatMap((edge) => edge.segments);
    if (segments.length === 0) wrong('an outline without parts');
    const apart = chainGap(segments);
    if (!(apart <= JOINED_MM)) wrong(`${apart} mm between two parts of its outline`);
  }
}

/** Ends of parts that follow each other lie no farther apart than rounding takes them, mm. */
const JOINED_MM = 1e-6;

/** How the edges of a piece lean as it is seen from its face, those alike in one sentence; none where all are square. */
export function edgeLeans({ outline, holes }: Pick<PlainDraft, 'outline' | 'holes'>): readonly string[] {
  const byLean = new Map<string, string[]>();
  for (const edge of [outline, ...holes].flat()) {
    const { from, middle, to } = edge.bevelDeg;
    const [least, most] = [Math.min(from, middle, to), Math.max(from, middle, to)];
    if (Math.max(Math.abs(least), Math.abs(most)) < SQUARE_DEG) continue;
    const isSteady = most - least < SQUARE_DEG;
    const lean = isSteady ? settingText(middle) : leansText([from, to, least, most].map(wholeDeg));
    const names = byLean.get(lean);
    if (names === undefined) byLean.set(lean, [edge.name]);
    else if (!names.includes(edge.name)) names.push(edge.name);
  }
  return [...byLean].map(([lean, names]) => `${names.join(', ')}: ${lean}`);
}
