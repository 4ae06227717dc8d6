export interface SizedScript {
  readonly name: string;
  /** As gzip sends it. */
  readonly bytes: number;
  /** Must arrive before the first picture. */
  readonly isFirst: boolean;
}
export const FIRST_LIMIT: number;
export function sizedScripts(dist: string): SizedScript[];
export function firstBytes(scripts: readonly SizedScript[]): number;
export function sizeTable(scripts: readonly SizedScript[]): string;
