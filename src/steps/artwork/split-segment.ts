import type { Vec2 } from '../../geom/vec.ts';
import type { ArtSegment } from '../../model/artwork.ts';
import { pointOn } from './segments.ts';

/** A segment as two, at a share of its parameter, 0 to 1; exact for each kind (cubics after de Casteljau). */
export function splitSegment(segment: ArtSegment, share: number): readonly [ArtSegment, ArtSegment] {
  const { from, to } = segment;
  const at = pointOn(segment, share);
  switch (segment.kind) {
    case 'line':
      return [
        { kind: 'line', from, to: at },
        { kind: 'line', from: at, to },
      ];
    case 'arc': {
      const turn = share * segment.turn;
      return [
        { ...segment, to: at, turn },
        { ...segment, from: at, start: segment.start + turn, turn: segment.turn - turn },
      ];
    }
    case 'cubic': {
      const mix = (a: Vec2, b: Vec2): Vec2 => ({ x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) });
      const [b, c] = segment.handles;
      const [ab, bc, cd] = [mix(from, b), mix(b, c), mix(c, to)];
      return [
        { kind: 'cubic', from, handles: [ab, mix(ab, bc)], to: at },
        { kind: 'cubic', from: at, handles: [mix(bc, cd), cd], to },
      ];
    }
  }
}
