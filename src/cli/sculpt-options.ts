import type { MakeChoices } from './make-command.ts';

/** Choices that say something of a sculpt, and the options that make them. */
const OF_SCULPT: Readonly<Partial<Record<keyof MakeChoices, string>>> = {
  seams: '--seams',
  newVersion: '--new-version',
  scale: '--unit, --size and --body',
  body: '--body',
  thicknessMm: '--thickness',
  wallMm: '--wall',
  staggerMm: '--stagger',
  pieceFoams: '--piece-foam',
  raises: '--raise',
  seamWishes: '--steep, --score and --fillet',
  simplify: '--simplify',
  areas: '--area',
  modelIs: '--model-is',
  neutral: '--neutral',
  offMm: '--off',
  traced: '--traced',
  up: '--up',
  shrinkage: '--shrink',
  rules: '--rule',
  wear: '--girth-at, --pass and --core',
  coreModel: '--core-model',
  mockUp: '--mock-up',
};

/** The first option among the choices that only a sculpt can be told; null where there is none. */
export function sculptOption(choices: MakeChoices): string | null {
  const { flatten = {}, paint = {}, machine } = choices;
  const named = (Object.keys(OF_SCULPT) as (keyof MakeChoices)[]).find((name) => choices[name] !== undefined);
  if (named !== undefined) return OF_SCULPT[named] ?? null;
  if (Object.keys(flatten).length > 0) return '--seam-price, --squash-price, --even-out and --keep-apart';
  if (paint.paints !== undefined || paint.shapes !== undefined) return '--paint and --clay';
  return machine?.models === undefined ? null : '--stl and --obj';
}
