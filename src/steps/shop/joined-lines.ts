import type { SeenLine } from './hidden-lines.ts';

/** Ends closer than this are one, mm at full size. */
const SAME_MM = 0.02;

/** Lines that end where another begins, put together as far as they go without a branch. @returns packed x y of each. */
export function joinedLines(lines: readonly SeenLine[]): readonly Float64Array[] {
  const at = new Map<string, number[]>();
  const key = (x: number, y: number): string => `${Math.round(x / SAME_MM)} ${Math.round(y / SAME_MM)}`;
  const enter = (where: string, i: number): void => {
    const list = at.get(where);
    if (list === undefined) at.set(where, [i]);
    else list.push(i);
  };
  lines.forEach(({ ax, ay, bx, by }, i) => {
    enter(key(ax, ay), i);
    enter(key(bx, by), i);
  });
  const used = new Uint8Array(lines.length);
  const nextAt = (x: number, y: number, own: number): number => {
    const ends = at.get(key(x, y)) ?? [];
    if (ends.length !== 2) return -1;
    const other = ends[0] === own ? ends[1] : ends[0];
    return used[other] === 0 ? other : -1;
  };
  return lines.flatMap((line, first): Float64Array[] => {
    if (used[first] !== 0) return [];
    used[first] = 1;
    const points = [line.ax, line.ay, line.bx, line.by];
    const grow = (): void => {
      for (let own = first; ;) {
        const [x, y] = points.slice(-2);
        const i = nextAt(x, y, own);
        if (i < 0) return;
        used[i] = 1;
        const { ax, ay, bx, by } = lines[i];
        if (key(ax, ay) === key(x, y)) points.push(bx, by);
        else points.push(ax, ay);
        own = i;
      }
    };
    grow();
    const turned: number[] = [];
    for (let i = points.length - 2; i >= 0; i -= 2) turned.push(points[i], points[i + 1]);
    points.splice(0, points.length, ...turned);
    grow();
    return [Float64Array.from(points)];
  });
}
