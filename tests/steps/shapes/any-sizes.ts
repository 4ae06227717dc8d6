import type { SizeField } from '../../../src/model/shape-size.ts';
import type { ShapeKind } from '../../../src/steps/shapes/shape-kind.ts';

/** Sizes for a shape as they would be typed, near their defaults: what has none is left out, choices and counts vary. */
export function nearSizes({ sizes }: ShapeKind, rand: () => number): [string, string][] {
  return sizes.flatMap((field): [string, string][] => {
    const text = nearText(field, rand);
    return text === null ? [] : [[field.name, text]];
  });
}

function nearText(
  { kind, default: first, choices, least, over, most, isList }: SizeField,
  rand: () => number,
): string | null {
  if (first === undefined || isList === true || typeof first === 'object') return null;
  if (choices !== undefined) return choices[Math.floor(rand() * choices.length)];
  const held = (value: number): number => Math.min(most ?? Infinity, Math.max(least ?? over ?? -Infinity, value));
  if (kind === 'count') return String(held(Math.round(Number(first) * (0.6 + 0.9 * rand()))));
  if (first === 0) return rand() < 0.5 ? '0' : String(held(kind === 'length' ? 8 * rand() : 0));
  return String(held(Number(first) * (0.6 + 0.8 * rand())));
}

/** Sizes from anywhere within their limits, and sometimes beyond: nobody would ask for most of these shapes. */
export function wildSizes({ sizes }: ShapeKind, rand: () => number): [string, string][] {
  return sizes.flatMap((field): [string, string][] => {
    if (rand() < 0.3) return [];
    return [[field.name, wildText(field, rand)]];
  });
}

function wildText(field: SizeField, rand: () => number): string {
  const { kind, choices, least = -1e5, over, most = 1e5, isList } = field;
  if (choices !== undefined) return choices[Math.floor(rand() * choices.length)];
  const one = (): string => {
    const pick = rand();
    if (pick < 0.1) return String(most);
    if (pick < 0.2) return String(over ?? least);
    if (kind === 'count') return String(Math.floor(rand() * 30));
    if (kind === 'length') return String(10 ** (6 * rand() - 2) * (rand() < 0.1 ? -1 : 1));
    if (kind === 'ratio') return String(rand());
    return String(Math.max(least, -720) + rand() * (Math.min(most, 720) - Math.max(least, -720)));
  };
  return isList === true ? Array.from({ length: 1 + Math.floor(4 * rand()) }, one).join(';') : one();
}
