import { clipPlaces, type Finding } from '../../base/finding.ts';
import { DRY_FIT_MM } from '../../base/tolerance.ts';
import type { OffsetRing } from '../../geom/offset-ring.ts';
import type { Patch } from '../../model/patch.ts';
import type { PanelCorner } from './panel-corners.ts';
import type { PieceShape } from './piece-shape.ts';

/** What is looked at of one piece. */
export interface SteppedPiece {
  readonly name: string;
  readonly patch: Patch;
  readonly shape: PieceShape;
  /** Corners that are trimmed against other panels, and told as such. */
  readonly corners: readonly PanelCorner[];
}

interface Step {
  readonly name: string;
  readonly vertex: number;
  readonly mm: number;
}

/**
 * Corners at which two cut lines are joined by a step: lines that meet nearly straight and are moved by different amounts, and those of a sharp
 * tip, would meet far away (`offsetRing`). Steps that a hand strays anyhow are left out, and those an allowance makes by right.
 */
export function cornerStepFindings(part: string, pieces: readonly SteppedPiece[]): readonly Finding[] {
  const steps = pieces.flatMap(stepsOf).filter(({ mm }) => mm > DRY_FIT_MM);
  if (steps.length === 0) return [];
  const worst = steps.reduce((most, step) => (step.mm > most.mm ? step : most));
  const vertices = [...new Set(steps.map(({ vertex }) => vertex))];
  const others = vertices.length === 1 ? '' : `, the largest of ${vertices.length} such corners`;
  return [
    {
      code: 'foam/corner-step',
      severity: 'note',
      text: `At a corner of ${worst.name} two cut lines would only meet far off and are joined by a step of ${worst.mm.toFixed(1)} mm${others}: cut it as drawn and fill what stays open, or part the piece there.`,
      value: worst.mm,
      limit: DRY_FIT_MM,
      unit: 'mm',
      where: { part, vertices: clipPlaces([worst.vertex, ...vertices.filter((vertex) => vertex !== worst.vertex)]) },
    },
  ];
}

function stepsOf({ name, patch, shape, corners }: SteppedPiece): readonly Step[] {
  return patch.loops.flatMap((loop, ring) => {
    const leftOut = new Set(corners.flatMap((corner) => (corner.loop === ring ? [corner.at] : [])));
    for (const edge of shape.edges) {
      if (edge.ring !== ring || edge.allowanceMm === 0) continue;
      leftOut.add(edge.from);
      leftOut.add(edge.to);
    }
    const [face, back] = [shape.face.moved[ring], shape.back.moved[ring]];
    return [...loop].flatMap((v, at): Step[] => {
      if (leftOut.has(at)) return [];
      const mm = Math.max(stepAt(face, at), stepAt(back, at));
      return mm > 0 ? [{ name, vertex: patch.meshVertices[v], mm }] : [];
    });
  });
}

/** Between the end of the edge before a point of the ring and the start of the next, mm. */
function stepAt({ ring, startOf, endOf }: OffsetRing, at: number): number {
  const [p, q] = [2 * endOf[(at + endOf.length - 1) % endOf.length], 2 * startOf[at]];
  return Math.hypot(ring[q] - ring[p], ring[q + 1] - ring[p + 1]);
}
