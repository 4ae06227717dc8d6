import { html, nothing, svg } from 'lit';
import type { ComparedPiece } from '../../model/comparison.ts';
import { HISTORY_WORDS } from './history-words.ts';

/** Room round the drawing, share of its larger side. */
const ROOM = 0.04;

/** A piece in both states, one over the other: the first filled, the second as a dashed line. */
export function twoOutlines({ one, other }: ComparedPiece) {
  const rings = [...(one?.rings ?? []), ...(other?.rings ?? [])];
  if (rings.length === 0) return nothing;
  const [left, right] = endsOf(rings, 0);
  const [low, high] = endsOf(rings, 1);
  const room = ROOM * Math.max(right - left, high - low);
  const box = [left - room, -high - room, right - left + 2 * room, high - low + 2 * room];
  const { number = 0, name = '' } = one ?? other ?? {};
  const words = HISTORY_WORDS.compare;
  return html`<svg viewBox=${box.join(' ')} role="img" aria-label=${words.picture(words.piece(number, name))}>
    <g transform="scale(1 -1)">
      ${one === null ? nothing : svg`<path class="first" fill-rule="evenodd" d=${pathOf(one.rings)} />`}
      ${other === null ? nothing : svg`<path class="second" d=${pathOf(other.rings)} />`}
    </g>
  </svg>`;
}

const pathOf = (rings: readonly Float64Array[]): string =>
  rings
    .map((ring) => {
      const points = Array.from(
        { length: ring.length / 2 },
        (_, i) => `${short(ring[2 * i])} ${short(ring[2 * i + 1])}`,
      );
      return `M${points.join('L')}Z`;
    })
    .join('');

const short = (mm: number): number => Math.round(mm * 10) / 10;

/** Least and greatest of one coordinate. */
function endsOf(rings: readonly Float64Array[], from: 0 | 1): readonly [number, number] {
  let [least, most] = [Infinity, -Infinity];
  for (const ring of rings)
    for (let i = from; i < ring.length; i += 2) {
      least = Math.min(least, ring[i]);
      most = Math.max(most, ring[i]);
    }
  return [least, most];
}
