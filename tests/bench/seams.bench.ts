// How true the seams come out, and what that costs inside the pieces: npm run bench:seams [-- names of models]
// Every sample and every test model with its own seams in 6 mm foam, at the plain minimum, with seams held alone, and as a new part begins.
import { FLATTEN_WISHES, type FlattenWishes } from '../../src/model/flatten-settings.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { REAL_MODELS, SHAPES } from '../reference/seams/test-models.ts';
import { runModel } from '../reference/test-model-chain.ts';
import { runSample, SAMPLE_NAMES } from '../support/run-sample.ts';
import { isWithin, partStretch, seamFits, type PartStretch, type SeamFit, type WalkedPart } from './seam-share.ts';
import { textTable } from './text-table.ts';

/** Pieces whose 99th percentile of stretch is under this must have true seams, per cent. */
const GENTLE_PCT = 5;

interface Subject {
  readonly name: string;
  readonly run: (flatten: FlattenWishes) => Promise<Outcome>;
}

const SUBJECTS: readonly Subject[] = [
  ...SAMPLE_NAMES.map((name) => ({
    name: `sample ${name}`,
    run: (flatten: FlattenWishes) =>
      runSample(name, (project) => {
        const [part] = project.parts;
        return { ...project, parts: [{ ...part, flatten }] };
      }),
  })),
  ...[...SHAPES, ...REAL_MODELS].map((model) => ({
    name: model.name,
    run: async (flatten: FlattenWishes) => (await runModel(model, { flatten })).outcome,
  })),
];

/** Nothing held, squash as dear as stretch. */
const PLAIN: FlattenWishes = { ...FLATTEN_WISHES, seamPrice: 0, squashPrice: 1, evenOut: false };
/** Seams at their price, all else plain: what the seams alone cost. */
const SEAMS_ONLY: FlattenWishes = { ...PLAIN, seamPrice: FLATTEN_WISHES.seamPrice };

/** One seam at the plain minimum and as a new part begins. */
interface Walked {
  readonly model: string;
  readonly plain: SeamFit;
  readonly fit: SeamFit;
}

const isGentle = ({ plain }: Walked): boolean => plain.gentlestP99Pct < GENTLE_PCT;

const asked = process.argv.slice(2);
const rows: string[][] = [];
const all: Walked[] = [];
for (const { name, run } of SUBJECTS) {
  if (asked.length > 0 && !asked.some((word) => name.endsWith(word))) continue;
  const plain = walkedPart(await run(PLAIN));
  const held = walkedPart(await run(SEAMS_ONLY));
  const begun = walkedPart(await run(FLATTEN_WISHES));
  const plainFits = seamFits(plain);
  const seams = seamFits(begun).map((fit, i) => ({ model: name, plain: plainFits[i], fit }));
  all.push(...seams);
  const stretches = [plain, held, begun].map(partStretch);
  const change = (figure: (stretch: PartStretch) => number, digits: number): string =>
    stretches.map((stretch) => figure(stretch).toFixed(digits)).join(' > ');
  rows.push([
    name,
    String(begun.pieces.length),
    shareText(plainFits),
    shareText(seams.map(({ fit }) => fit)),
    shareText(seams.filter(isGentle).map(({ fit }) => fit)),
    mostText(plainFits),
    mostText(seams.map(({ fit }) => fit)),
    change(({ p99Pct }) => p99Pct, 2),
    change(({ maxPct }) => maxPct, 2),
    change(({ squashMaxPct }) => squashMaxPct, 2),
    change(({ energy }) => energy, 5),
  ]);
}

const { seamPrice, squashPrice } = FLATTEN_WISHES;
const head = [
  ...['model', 'pieces', 'true, plain', 'true', 'of gentle', 'worst mm, plain', 'worst mm'],
  ...['p99 stretch %', 'max stretch %', 'max squash %', 'mean energy'],
];
process.stdout.write(`Seams in 6 mm foam. True: within 0.5 mm or 0.25 %, whichever is more, at every corner of the walk
Plain: nothing held; else as a new part begins: seam price ${seamPrice}, squash price ${squashPrice}
Of gentle: seams of pieces whose 99th percentile of stretch is under ${GENTLE_PCT} % at the plain minimum
Stretch, squash (of the worst piece) and energy (of all pieces): plain > seams held, squash plain > as a new part begins
${textTable(head, rows)}
All seams: ${shareText(all.map(({ fit }) => fit))} true; seams of gentle pieces: ${shareText(all.filter(isGentle).map(({ fit }) => fit))} true

`);

const wrong = all.filter(({ fit }) => !isWithin(fit));
if (wrong.length > 0) {
  const lines = wrong.map(({ model, plain, fit }) => [
    model,
    fit.letter,
    fit.lengthMm.toFixed(1),
    fit.misalignmentMm.toFixed(2),
    fit.allowedMm.toFixed(2),
    `${plain.gentlestP99Pct.toFixed(2)} > ${fit.gentlestP99Pct.toFixed(2)}`,
  ]);
  const lineHead = [
    'not true',
    'seam',
    'length mm',
    'apart mm',
    'allowed mm',
    'p99 stretch of the gentler piece, plain > now, %',
  ];
  process.stdout.write(textTable(lineHead, lines));
}

function walkedPart({ pieces, flats, seams }: Outcome): WalkedPart {
  return { pieces: pieces ?? [], flats: flats ?? [], seams: seams ?? [] };
}

function shareText(fits: readonly SeamFit[]): string {
  return `${fits.filter(isWithin).length} of ${fits.length}`;
}

function mostText(fits: readonly SeamFit[]): string {
  return fits.length === 0 ? '' : Math.max(...fits.map(({ misalignmentMm }) => misalignmentMm)).toFixed(3);
}
