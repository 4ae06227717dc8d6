import { layChain } from '../geom/outline.ts';
import type { PlainDraft } from './plain-piece.ts';
import type { ShapeEdge } from './shape.ts';

const TURNED = { x: 0, y: 0, turnRad: 0, isFlipped: true } as const;

/** A piece mirrored left to right, in its own frame; its key ends with `-mirrored`, its name is as it was. */
export function mirroredDraft(draft: PlainDraft): PlainDraft {
  const turned = (edges: readonly ShapeEdge[]): readonly ShapeEdge[] => edges.map(turnedEdge).reverse();
  return {
    ...draft,
    key: `${draft.key}-mirrored`,
    outline: turned(draft.outline),
    holes: draft.holes.map(turned),
    lines: draft.lines.map((line) => ({
      ...line,
      points: line.points.map((value, k) => (k % 2 === 0 ? 0 - value : value)),
    })),
    ...(draft.grainRad === undefined ? {} : { grainRad: Math.PI - draft.grainRad }),
  };
}

/** What was its end is its start. */
const turnedEdge = (edge: ShapeEdge): ShapeEdge => ({
  ...edge,
  segments: layChain(edge.segments, TURNED),
  bevelDeg: { from: edge.bevelDeg.to, middle: edge.bevelDeg.middle, to: edge.bevelDeg.from },
});
