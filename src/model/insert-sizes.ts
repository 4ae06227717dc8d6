import { fail, ok, type Result } from '../base/result.ts';
import data from '../../shared/inserts.json';
import { INSERT_KINDS, type CellKind, type InsertForm, type InsertKind } from './insert.ts';

/** A thing of a size it is sold in. */
export interface InsertSize {
  readonly kind: InsertKind;
  readonly name: string;
  readonly also: readonly string[];
  /** `Disc magnets`. */
  readonly title: string;
  /** Null where there is none. */
  readonly standard: string | null;
  readonly source: string;
  /** As it lies in its pocket; null where the maker says how long or how large it is. */
  readonly form: InsertForm | null;
  /** Across it, of what is sold by the length, mm; else null. */
  readonly widthMm: number | null;
  /** How deep it is in its pocket, mm; null where that is the wall's. */
  readonly depthMm: number | null;
  readonly opening: InsertForm | null;
  /** Thickness of the panel it sits in, mm, least and greatest; null where it needs none. */
  readonly panelMm: readonly [number, number] | null;
  readonly cell: CellKind | null;
}

interface Round {
  readonly diameter: number;
}
interface ListedSize {
  readonly size: string;
  readonly also?: readonly string[];
  readonly diameter?: number;
  readonly height?: number;
  readonly length?: number;
  readonly width?: number;
  readonly depth?: number;
  readonly opening?: Round;
  readonly panel?: readonly number[];
}
interface ListedSeries {
  readonly kind: string;
  readonly title: string;
  readonly standard: string | null;
  readonly source: string;
  readonly cell?: string;
  readonly sizes: readonly ListedSize[];
}

/** Everything of `shared/inserts.json`. */
export const INSERT_SIZES: readonly InsertSize[] = checkInsertSizes(
  (data.series as readonly ListedSeries[]).flatMap(({ kind, title, standard, source, cell, sizes }) =>
    sizes.map((one): InsertSize => ({
      kind: kind as InsertKind,
      name: one.size,
      also: one.also ?? [],
      title,
      standard,
      source,
      ...lyingForm(one),
      opening: one.opening === undefined ? null : round(one.opening.diameter),
      panelMm: one.panel === undefined ? null : [one.panel[0], one.panel[1]],
      cell: (cell as CellKind | undefined) ?? null,
    })),
  ),
);

function round(diameterMm: number): InsertForm {
  return { shape: 'round', diameterMm };
}

/** Round things that are longer than they are thick lie on their side, unless they stand in a panel; all others lie flat. */
function lyingForm({ diameter, height, length, width, depth, panel }: ListedSize) {
  if (diameter !== undefined && height !== undefined) {
    const isLying = height > diameter && panel === undefined;
    const form: InsertForm = isLying ? { shape: 'rectangle', lengthMm: height, widthMm: diameter } : round(diameter);
    return { form, widthMm: null, depthMm: isLying ? diameter : height };
  }
  const form: InsertForm | null =
    length !== undefined && width !== undefined ? { shape: 'rectangle', lengthMm: length, widthMm: width } : null;
  return { form, widthMm: form === null ? (width ?? null) : null, depthMm: depth ?? null };
}

/**
 * The one of that name among those of a kind: `AA`, `lr6`, `disc 10x2`.
 * @returns fails with `insert/size`, which names what there is.
 */
export function findInsertSize(kind: InsertKind, name: string): Result<InsertSize> {
  const own = INSERT_SIZES.filter((one) => one.kind === kind);
  const key = plainName(name);
  const found = own.find((one) => [one.name, ...one.also].some((word) => plainName(word) === key));
  return found === undefined
    ? fail(
        'insert/size',
        `There is no ${kind} “${name}” here: choose one of ${own.map((one) => one.name).join(', ')}, or give its own measures.`,
      )
    : ok(found);
}

/** Every name once within its kind, every figure a size. @throws Error: a broken list is our mistake. */
export function checkInsertSizes(sizes: readonly InsertSize[]): readonly InsertSize[] {
  const names = new Set<string>();
  for (const { kind, name, also, source, form, widthMm, depthMm, opening, panelMm } of sizes) {
    if (!INSERT_KINDS.includes(kind)) throw new Error(`insert ${name} is of no kind`);
    if (source === '') throw new Error(`insert ${name} has no source`);
    const figures = [form, opening].flatMap((one) =>
      one === null || one.shape === 'outline'
        ? []
        : one.shape === 'round'
          ? [one.diameterMm]
          : [one.lengthMm, one.widthMm],
    );
    const all = [...figures, ...[widthMm, depthMm].filter((mm) => mm !== null), ...(panelMm ?? [])];
    if (all.length === 0 || !all.every((mm) => mm > 0 && mm < 500)) throw new Error(`insert ${name} has no size`);
    for (const word of [name, ...also]) {
      const key = `${kind} ${plainName(word)}`;
      if (names.has(key)) throw new Error(`insert ${word} is listed twice`);
      names.add(key);
    }
  }
  return sizes;
}

function plainName(name: string): string {
  return name
    .toLowerCase()
    .replace(/×/g, 'x')
    .replace(/[\s_-]+/g, '');
}
