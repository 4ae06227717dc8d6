import { formatArea } from '../../base/format-length.ts';
import type { Finding } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { terraced } from '../../mesh/extruded.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { ArtOpenLine, ArtPiece, ArtRegion, Artwork } from '../../model/artwork.ts';
import { mirroredDraft } from '../../model/mirrored-draft.ts';
import type { PlainDraft, PlainLine, PlainStep, PlainWork } from '../../model/plain-piece.ts';
import type { ArtworkCut } from '../../model/artwork-craft.ts';
import { lineWithin } from './lines-within.ts';
import { edgesOfRegion } from './outline-of-art.ts';

/** A line of less than this outside of its piece ends on its edge, mm: finer than any knife. */
const OUTSIDE_MM = 0.05;

/**
 * Flat artwork as pieces of foam: each area with its exact outline and holes, open lines engraved on what they lie on, each glued flat.
 * @returns fails with `artwork/no-area` where nothing bounds one.
 * @throws RangeError for a thickness or quantity that is none.
 */
export function artworkWork(artwork: Artwork, cut: ArtworkCut): Result<PlainWork> {
  const { thicknessMm, quantity = 1, isMirroredToo = false } = cut;
  if (!(thicknessMm > 0)) throw new RangeError(`thickness ${thicknessMm} mm`);
  if (!(quantity >= 1)) throw new RangeError(`quantity ${quantity}`);
  const cuts = cutAreas(artwork.pieces);
  if (cuts.length === 0)
    return fail('artwork/no-area', 'Nothing in the drawing bounds an area to cut out: close its lines, or fill them.');
  const findings: Finding[] = [];
  const engraved = engravedOn(artwork.pieces, cuts, findings);
  const drafts = cuts.map(({ key, name, region }, i): PlainDraft => ({
    key,
    name,
    quantity,
    thicknessMm,
    drawnAt: 1,
    ...edgesOfRegion(region, artwork.deviationMm),
    bend: { kind: 'flat' },
    lines: engraved[i],
    notes: [],
    areaMm2: region.areaMm2,
  }));
  const pieces = isMirroredToo
    ? drafts.flatMap((draft) => [draft, { ...mirroredDraft(draft), name: `${draft.name}, mirrored` }])
    : drafts;
  const form = slabOf(cuts, thicknessMm);
  return ok({ pieces, steps: pieces.map(glueStep), findings, form }, findings);
}

/** An area that is cut out, and what it is called. */
interface CutArea {
  readonly key: string;
  readonly name: string;
  readonly piece: ArtPiece;
  readonly region: ArtRegion;
}

function cutAreas(pieces: readonly ArtPiece[]): readonly CutArea[] {
  const taken = new Set<string>();
  const own = (name: string): string => {
    const plain =
      name
        .toLowerCase()
        .replace(/[^\p{L}\p{N}]+/gu, '-')
        .replace(/^-+|-+$/g, '') || 'area';
    let key = plain;
    for (let again = 2; taken.has(key); again += 1) key = `${plain}-${again}`;
    taken.add(key);
    return key;
  };
  return pieces.flatMap((piece) =>
    piece.regions.map((region, i): CutArea => {
      const name = piece.regions.length === 1 ? piece.name : `${piece.name} ${i + 1}`;
      return { key: own(name), name, piece, region };
    }),
  );
}

const ringsOf = ({ outline, holes }: ArtRegion): Float64Array[] => [outline.ring, ...holes.map(({ ring }) => ring)];

/** Of each area the open lines on it. A piece's own lines lie on its areas alone; loose lines on whatever is under them. */
function engravedOn(
  pieces: readonly ArtPiece[],
  cuts: readonly CutArea[],
  findings: Finding[],
): readonly (readonly PlainLine[])[] {
  const engraved = cuts.map((): PlainLine[] => []);
  for (const piece of pieces) {
    for (const line of piece.lines) {
      let insideMm = 0;
      for (const [i, { region, piece: owner }] of cuts.entries()) {
        if (piece.regions.length > 0 && owner !== piece) continue;
        const { parts, outsideMm } = lineWithin(line.points, ringsOf(region));
        if (parts.length === 0) continue;
        insideMm += line.lengthMm - outsideMm;
        for (const points of parts) engraved[i].push({ role: 'engrave', points, closed: false });
      }
      if (line.lengthMm - insideMm > OUTSIDE_MM) findings.push(outsideFinding(piece.name, line, insideMm));
    }
  }
  return engraved;
}

function outsideFinding(piece: string, { shape, path, lengthMm }: ArtOpenLine, insideMm: number): Finding {
  const { x, y } = path.segments[0].from;
  return {
    code: 'artwork/engraved-outside',
    severity: 'warning',
    text:
      insideMm > 0
        ? `${shape} runs off the piece it lies on for ${(lengthMm - insideMm).toFixed(1)} mm, which is not engraved: shorten it in the drawing, or close it if it is to be cut out.`
        : `${shape} is an open line that lies on no piece: it is left out. Close it if it is to be cut out.`,
    value: lengthMm - insideMm,
    unit: 'mm',
    where: { piece, point: [x, y, 0] },
  };
}

function glueStep({ key, name, quantity, areaMm2 }: PlainDraft): PlainStep {
  const glueMm2 = 2 * areaMm2 * quantity;
  const what = quantity === 1 ? name : `each of ${quantity} of ${name}`;
  return {
    work: 'lay',
    pieces: [key],
    text: `Glue ${what} flat in its place: brush its back and what it lies on, ${formatArea(glueMm2, 'mm')} in all, and press it down from the middle outward.`,
    glueMm2,
    cautions: ['adhesive'],
  };
}

/** Everything as it was drawn, its face at z = thickness; null where areas touch so that no closed body comes of them. */
function slabOf(cuts: readonly CutArea[], thicknessMm: number): Mesh | null {
  const regions = cuts.map(({ region }) => ({
    outer: region.outline.ring,
    holes: region.holes.map(({ ring }) => ring),
  }));
  return terraced([{ regions, bottom: 0, top: thicknessMm }]);
}
