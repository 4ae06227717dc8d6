import type { Glue } from '../../model/glues.ts';

/** A stretch of seam to be brushed and joined. */
export interface GlueLoad {
  readonly lengthMm: number;
}

/** Times from the first stroke of the brush, minutes. */
export interface BatchTimes {
  readonly brushedMin: number;
  readonly joinFromMin: number;
  readonly joinedMin: number;
}

/**
 * Brushes all edges in the order in which they are joined, both faces of each, then joins them one after the other, each not before its glue is
 * touch-dry.
 * @returns the times, or null where some edge would have to wait longer than its glue stays open.
 */
export function batchTimes(glue: Glue, loads: readonly GlueLoad[]): BatchTimes | null {
  const { waitMin, openMin, brushMmPerMin, joinMmPerMin, alignMinPerSeam } = glue;
  let now = 0;
  const brushed = loads.map(({ lengthMm }) => {
    const from = now;
    now += (2 * lengthMm) / brushMmPerMin;
    return { from, to: now };
  });
  const brushedMin = now;
  let joinFromMin = brushedMin;
  for (const [i, { lengthMm }] of loads.entries()) {
    now = Math.max(now, brushed[i].to + waitMin);
    if (i === 0) joinFromMin = now;
    now += alignMinPerSeam + lengthMm / joinMmPerMin;
    if (now - brushed[i].from > openMin + ROUNDING_MIN) return null;
  }
  return { brushedMin, joinFromMin, joinedMin: now };
}

/** What adding up minutes may round by. */
const ROUNDING_MIN = 1e-9;

/** The longest stretch that can be brushed and joined by itself, mm, > 0. */
export function longestStretchMm({ waitMin, openMin, brushMmPerMin, joinMmPerMin, alignMinPerSeam }: Glue): number {
  return (openMin - waitMin - alignMinPerSeam) / (2 / brushMmPerMin + 1 / joinMmPerMin);
}

/**
 * Parts a seam into stretches no longer than can be joined by itself: at match marks as far on as they serve, else where it must be.
 * @param marksMm places of its match marks, mm from its start.
 * @returns from and to of each, mm; one where it is short enough.
 */
export function stretchesOf(
  lengthMm: number,
  marksMm: readonly number[],
  mostMm: number,
): readonly (readonly [number, number])[] {
  const parts: [number, number][] = [];
  for (let from = 0; from < lengthMm;) {
    const reach = from + mostMm;
    const mark = marksMm.filter((mm) => mm > from && mm <= reach && mm < lengthMm).at(-1);
    const to = reach >= lengthMm ? lengthMm : (mark ?? reach);
    parts.push([from, to]);
    from = to;
  }
  return parts;
}
