/**
 * What the program has to say about a thing: where it is, how bad it is and what to do about it.
 * A finding travels with a value that stands; a {@link Problem} takes the value's place.
 */
export type Severity = 'note' | 'warning' | 'error';

/** The elements a finding speaks of. Every index is in the numbering of the mesh in force; points are in mm, model space. */
export interface FindingPlace {
  readonly part?: string;
  /** The other part, of what is between two. */
  readonly otherPart?: string;
  readonly piece?: string;
  readonly seam?: string;
  /** Triangles of the mesh. */
  readonly triangles?: readonly number[];
  /** Edges as pairs of vertices of the mesh. */
  readonly edges?: readonly (readonly [number, number])[];
  readonly vertices?: readonly number[];
  /** One point to look at, mm, model space. */
  readonly point?: readonly [number, number, number];
}

/** One of the maker's wishes as the document names it: edges as pairs of corners and faces in file numbers. What forgetting it takes. */
export type NamedWish =
  | { readonly about: 'edge'; readonly edges: readonly (readonly [number, number])[]; readonly asks: WishedOfEdge }
  | { readonly about: 'seam'; readonly edge: readonly [number, number] }
  | { readonly about: 'piece'; readonly face: number }
  | { readonly about: 'area'; readonly id: string }
  | { readonly about: 'faces'; readonly faces: readonly number[] }
  | { readonly about: 'shrinkage' };

/** What a wish for an edge asks. */
export type WishedOfEdge = 'anything' | 'holdLength' | 'straight';

export interface Finding {
  /** Stable name, `folder/what`, for example `read/hole`. */
  readonly code: string;
  readonly severity: Severity;
  /** One sentence: what is so and what to do. */
  readonly text: string;
  /** The figure that was measured and the limit it was held against, both in `unit`. */
  readonly value?: number;
  readonly limit?: number;
  readonly unit?: string;
  readonly where: FindingPlace;
  /** The wish it speaks of, where forgetting it would settle the matter. */
  readonly wish?: NamedWish;
}

/** What is written of a finding in files for checking: all but its place and its wish. */
export const findingFigures = ({ code, severity, text, value, limit, unit }: Finding) => ({
  code,
  severity,
  text,
  value,
  limit,
  unit,
});

/** The most elements one finding carries; a broken scan may have a million. The text still gives the true count. */
export const MOST_PLACES = 2000;

/** Keeps the first {@link MOST_PLACES} of a list. */
export function clipPlaces<T>(list: readonly T[]): readonly T[] {
  return list.length > MOST_PLACES ? list.slice(0, MOST_PLACES) : list;
}
