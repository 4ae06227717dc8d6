import { readFileSync } from 'node:fs';

/** One worked case of tests/reference/handbook-cases.json, which names the source of each. */
export interface HandbookCase {
  readonly id: string;
  readonly inputs: Readonly<Record<string, number>>;
  readonly expected: Readonly<Record<string, number>>;
}

interface RawCase {
  readonly id: string;
  readonly inputs: Readonly<Record<string, number | readonly number[]>>;
  readonly expected: Readonly<Record<string, number | readonly number[]>>;
}

const { cases } = JSON.parse(readFileSync(new URL('../handbook-cases.json', import.meta.url), 'utf8')) as {
  cases: readonly RawCase[];
};

/** A case whose figures are single numbers. */
export function numbersOf(id: string): HandbookCase {
  const { inputs, expected } = rawCase(id);
  return { id, inputs: onlyNumbers(inputs), expected: onlyNumbers(expected) };
}

/** A row of figures of a case, e.g. the ordinates of a development. */
export function rowOf(id: string, part: 'inputs' | 'expected', key: string): readonly number[] {
  const row = rawCase(id)[part][key];
  if (!Array.isArray(row)) throw new Error(`case ${id} has no row ${key}`);
  return row as readonly number[];
}

function rawCase(id: string): RawCase {
  const found = cases.find((candidate) => candidate.id === id);
  if (found === undefined) throw new Error(`no case ${id}`);
  return found;
}

const onlyNumbers = (figures: RawCase['inputs']): Readonly<Record<string, number>> =>
  Object.fromEntries(
    Object.entries(figures).filter((entry): entry is [string, number] => typeof entry[1] === 'number'),
  );
