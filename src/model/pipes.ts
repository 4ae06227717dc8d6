import { MM_PER_INCH } from '../base/format-length.ts';
import { fail, ok, type Result } from '../base/result.ts';
import data from '../../shared/pipes.json';

/** A pipe, tube or rod of a standard or common size. */
export interface Pipe {
  /** As it is asked for: `PVC 32`, `Schedule 40 1/2`, `Dowel 25`. */
  readonly name: string;
  /** The same by another common word; `DN25`. */
  readonly also: string | null;
  /** What it is: `PVC-U pressure pipe, 16 bar`. */
  readonly title: string;
  /** `pvc`, `steel` …; `pvc or steel` where the name does not tell. */
  readonly material: string;
  /** Null where there is none. */
  readonly standard: string | null;
  readonly outsideMm: number;
  /** 0: solid; null where the standard leaves it to the maker. */
  readonly wallMm: number | null;
  /** Where the figures come from. */
  readonly source: string;
}

interface Size {
  readonly size: string;
  readonly also?: string;
  readonly outside: number;
  readonly wall?: number | 'solid';
}

/** Every pipe of `shared/pipes.json`. */
export const PIPES: readonly Pipe[] = checkPipes(
  data.series.flatMap(({ name, title, material, standard, unit, source, sizes }) => {
    const mm = unit === 'in' ? MM_PER_INCH : 1;
    return (sizes as readonly Size[]).map(({ size, also, outside, wall }) => ({
      name: `${name} ${size}`,
      also: also ?? null,
      title,
      material,
      standard,
      outsideMm: outside * mm,
      wallMm: wall === undefined ? null : wall === 'solid' ? 0 : wall * mm,
      source,
    }));
  }),
);

/**
 * The pipe of that name, in any case, with or without spaces: `pvc 32`, `PVC32`, `DN25`.
 * @returns fails with `core/pipe`, which names what there is.
 */
export function findPipe(name: string): Result<Pipe> {
  const key = plainName(name);
  const found = PIPES.find((one) => plainName(one.name) === key || (one.also !== null && plainName(one.also) === key));
  if (found !== undefined) return ok(found);
  const near = PIPES.filter((one) => key !== '' && plainName(one.name).startsWith(key.replace(/[\d./]+$/, '')));
  const offered = near.length > 0 && near.length < PIPES.length ? near.map((one) => one.name) : seriesNames();
  return fail(
    'core/pipe',
    `There is no pipe “${name}” here: choose one of ${offered.join(', ')}, or give its diameter in mm.`,
  );
}

/** Every name once, walls under half of the diameter. @throws Error: a broken list is our mistake. */
export function checkPipes(pipes: readonly Pipe[]): readonly Pipe[] {
  const names = new Set<string>();
  for (const { name, also, outsideMm, wallMm, source } of pipes) {
    if (!(outsideMm > 1 && outsideMm < 1000)) throw new Error(`pipe ${name} is ${outsideMm} mm outside`);
    if (wallMm !== null && !(wallMm >= 0 && wallMm < outsideMm / 2))
      throw new Error(`pipe ${name} has a wall of ${wallMm} mm`);
    if (source === '') throw new Error(`pipe ${name} has no source`);
    for (const one of [name, also]) {
      if (one === null) continue;
      if (names.has(plainName(one))) throw new Error(`pipe ${one} is listed twice`);
      names.add(plainName(one));
    }
  }
  return pipes;
}

const seriesNames = (): readonly string[] =>
  data.series.map(({ name, sizes }) => `${name} ${sizes[0].size} … ${sizes[sizes.length - 1].size}`);

function plainName(name: string): string {
  return name.toLowerCase().replace(/[\s_-]+/g, '');
}
