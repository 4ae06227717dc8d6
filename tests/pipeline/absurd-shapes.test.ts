import { describe, expect, it } from 'vitest';
import type { SizeField } from '../../src/model/shape-size.ts';
import { ALL_SHAPES, shapeFrom } from '../../src/pipeline/shapes.ts';
import type { TypedSize } from '../../src/steps/shapes/read-sizes.ts';
import { shapeWork } from '../../src/steps/shapes/shape-work.ts';
import { forAll } from '../support/for-all.ts';

const FOAM = { thicknessMm: 6, neutralFraction: 0.5 };

const numbersIn = (value: unknown): readonly number[] => {
  if (typeof value === 'number') return [value];
  if (ArrayBuffer.isView(value)) return [...(value as Float64Array)];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
};

const withoutTyped = (text: string): string => text.replace(/, not .*$/u, '');

/** A shape of finite figures with work to do, or one sentence that names what to change. */
function expectAnswer(name: string, typed: readonly TypedSize[]): void {
  const what = `${name} ${typed.map(([size, text]) => `${size}=${text}`).join(' ')}`;
  const made = shapeFrom(name, typed);
  if (!made.ok) {
    expect(made.problem.code, what).toMatch(/^shape\//);
    expect(made.problem.text, what).toMatch(/\.$/);
    // What was typed is told again; nothing else is no number.
    expect(withoutTyped(made.problem.text), what).not.toMatch(/NaN|Infinity|undefined/);
    return;
  }
  const { measures, pieces, seams } = made.value;
  const all = [measures.map(({ value }) => value), pieces, seams].flatMap(numbersIn);
  expect(all.every(Number.isFinite), what).toBe(true);
  const { pieces: drafts, steps } = shapeWork({ ...made.value, patches: [], solid: null }, FOAM);
  expect(numbersIn(drafts.map(({ lines }) => lines)).every(Number.isFinite), what).toBe(true);
  expect(
    steps.every(({ glueMm2 }) => Number.isFinite(glueMm2) && glueMm2 >= 0),
    what,
  ).toBe(true);
}

const TEXTS = [
  '0',
  '-0',
  '-12',
  '1e5',
  '1e9',
  '1e-9',
  'NaN',
  'Infinity',
  '-Infinity',
  '',
  ' ',
  'abc',
  '1/0',
  '0/0',
  '4 1/2 in',
  '1e400',
  '--3',
  '🙂',
];

describe('absurd sizes', () => {
  it('each alone end in a shape or in a sentence', () => {
    // Every size takes its turn with a third of the texts.
    let turn = 0;
    for (const { name, sizes } of ALL_SHAPES)
      for (const field of sizes) {
        turn += 1;
        TEXTS.forEach((text, i) => {
          if ((i + turn) % 3 === 0) expectAnswer(name, [[field.name, text]]);
        });
      }
  });

  it('text that is no number is refused by name', () => {
    for (const { name, sizes } of ALL_SHAPES)
      for (const field of sizes.filter(({ kind }) => kind !== 'choice')) {
        const made = shapeFrom(name, [[field.name, 'NaN']]);
        expect(made.ok ? '' : made.problem.code, `${name} ${field.name}`).toBe('shape/unreadable');
        expect(made.ok ? '' : made.problem.text).toContain(field.name);
      }
  });

  it('exchanged with each other end in a shape or in a sentence', () =>
    forAll(
      (rand) => ALL_SHAPES.map(({ sizes }) => exchanged(sizes, rand)),
      (all) => ALL_SHAPES.forEach(({ name }, i) => expectAnswer(name, all[i])),
      { runs: 3 },
    ));

  it('mixed from anywhere end in a shape or in a sentence', () =>
    forAll(
      (rand) =>
        ALL_SHAPES.map(({ sizes }) =>
          sizes.flatMap(({ name }): TypedSize[] =>
            rand() < 0.6 ? [] : [[name, TEXTS[Math.floor(rand() * TEXTS.length)]]],
          ),
        ),
      (all) => ALL_SHAPES.forEach(({ name }, i) => expectAnswer(name, all[i])),
      { runs: 3 },
    ));
});

it('a limit is told in the unit that was typed', () => {
  const told = (text: string): string => {
    const made = shapeFrom('wrap', [['thickness', text]]);
    return made.ok ? '' : made.problem.text;
  };
  expect(told('300 mm')).toBe('thickness must be at least 0 and at most 200 mm, not 300 mm.');
  expect(told('12 in')).toBe('thickness must be at least 0 and at most 7.874 in, not 12 in.');
  expect(told('-1/2"')).toContain('not -0.5 in.');
});

/** Usual lengths handed round among the sizes that have one. */
function exchanged(sizes: readonly SizeField[], rand: () => number): readonly TypedSize[] {
  const lengths = sizes.filter(({ kind, default: first }) => kind === 'length' && typeof first === 'number');
  const order = lengths.map((_, i) => i).sort(() => rand() - 0.5);
  return lengths.map(({ name }, i) => [name, String(lengths[order[i]].default)]);
}
