import { ringArea } from '../geom/ring.ts';
import { triangleArea } from '../mesh/measure.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { Template } from '../model/template.ts';
import { turnUpright } from '../steps/foam/piece-frame.ts';
import { pieceIds, pieceNames, settingsOfPatches } from '../steps/foam/piece-names.ts';
import { foamBoxOf, onPaper, pieceStrokes } from '../steps/foam/template-lines.ts';
import type { EarlyOutcome, Outcome } from './outcome.ts';

/** Pieces that can be drawn, each with its template. */
export interface DrawnPieces {
  readonly pieces: readonly FoamPiece[];
  readonly templates: readonly Template[];
}

/**
 * Pieces to look at while the work goes on. One that is laid flat as it was before stays as it was drawn; any other is its bare outline:
 * edges cut square, without folds, marks or words.
 * @param before  the last finished run, if any.
 */
export function barePieces(early: EarlyOutcome, before: Outcome | null): DrawnPieces {
  const { sculpt, cut, part } = early;
  const { mesh } = sculpt;
  const { patches, shell, shells } = cut;
  const drawn = drawnBefore(before);
  const settings = settingsOfPatches(mesh, patches, part.pieceSettings);
  const ids = pieceIds(part.id, shell.layer, mesh, patches);
  let last = piecesBefore(early, before);
  const numbers = patches.map(({ kind }) => (kind === 'disc' || kind === 'windowed' ? (last += 1) : 0));
  const names = pieceNames(mesh, patches, settings, numbers, part.name);
  const pieces: FoamPiece[] = [];
  const templates: Template[] = [];
  early.flats.forEach((flat, i) => {
    if (flat === null) return;
    const old = drawn.get(flat);
    if (old !== undefined && old.piece.id === ids[i]) {
      pieces.push({ ...old.piece, patch: i });
      templates.push(old.template);
      return;
    }
    const patch = patches[i];
    const { uv, up } = turnUpright(patch, flat.uv, shells[i].neutralPositions, part.upAxis);
    const [outline, ...holes] = patch.loops.map((loop) =>
      Float64Array.from({ length: 2 * loop.length }, (_, k) => uv[2 * loop[k >> 1] + (k & 1)]),
    );
    const piece: FoamPiece = {
      id: ids[i],
      number: numbers[i],
      name: names[i],
      part: part.id,
      layer: shell.layer,
      foam: shells[i].foam,
      thicknessMm: shells[i].thicknessMm,
      quantity: part.copies * (settings[i].quantity ?? 1),
      bendStyle: 'rolled',
      bendReason: '',
      tracedSide: settings[i].tracedSide ?? part.tracedSide,
      revision: '',
      patch: i,
      uv,
      neutralOutline: outline,
      neutralHoles: holes,
      outline,
      holes,
      otherOutline: outline,
      otherHoles: holes,
      edges: [],
      folds: [],
      marks: [],
      up,
      areaMm2: [outline, ...holes].reduce((sum, ring) => sum + ringArea(ring), 0),
      surfaceAreaMm2: patch.meshTriangles.reduce(
        (sum, t) => sum + triangleArea(shells[i].neutralPositions, mesh.triangles, t),
        0,
      ),
      findings: [],
    };
    pieces.push(piece);
    templates.push(bareTemplate(piece));
  });
  return { pieces, templates };
}

/** How many pieces the sculpts before this one had. */
function piecesBefore({ project, part }: EarlyOutcome, before: Outcome | null): number {
  const own = project.parts.findIndex(({ id }) => id === part.id);
  const earlier = new Set<string>(project.parts.slice(0, own).map(({ id }) => id));
  return before?.pieces?.filter((piece) => earlier.has(piece.part)).length ?? 0;
}

function bareTemplate(piece: FoamPiece): Template {
  const paper = onPaper(piece);
  const box = foamBoxOf(paper);
  const drawing = { strokes: pieceStrokes(paper), words: [] };
  return { piece: piece.id, drawing, box, foamBox: box, reversed: paper.flip === -1 };
}

/** Finished pieces by the flat shape they were made of. */
function drawnBefore(before: Outcome | null): Map<FlatPiece, { piece: FoamPiece; template: Template }> {
  const drawn = new Map<FlatPiece, { piece: FoamPiece; template: Template }>();
  const seen = before?.cut?.shell.layer;
  before?.pieces?.forEach((piece, k) => {
    const flat = piece.layer === seen && piece.part === before.part?.id ? before.flats?.[piece.patch] : undefined;
    const template = before.templates?.[k];
    if (flat !== null && flat !== undefined && template !== undefined) drawn.set(flat, { piece, template });
  });
  return drawn;
}
