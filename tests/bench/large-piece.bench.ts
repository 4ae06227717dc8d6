// One large piece at full quality in a process of its own: node scripts/run-ts.mjs tests/bench/large-piece.bench.ts PATCH PARTS
// PATCH is a reference patch, PARTS the parts each side of its triangles is split into. Prints one line of JSON (LargePiece).
import { splitPatch } from './bench-patches.ts';
import { layFlat } from './lay-flat.ts';

/** What laying one large piece flat took. */
export interface LargePiece {
  readonly triangles: number;
  readonly ms: number;
  /** Peak of the whole process, and what it had reached before the piece was cut and laid flat, MB. */
  readonly peakMb: number;
  readonly beforeMb: number;
  /** Why it was refused, or null. */
  readonly refused: string | null;
  readonly energy: number;
  readonly flips: number;
  readonly steps: number;
  readonly converged: boolean;
  readonly checksum: string;
}

const peakMb = (): number => process.resourceUsage().maxRSS / 1024;

const [, , name, parts] = process.argv;
const mesh = splitPatch(name, Number(parts));
const beforeMb = peakMb();
const began = performance.now();
let line: Partial<LargePiece>;
try {
  const { ms, figures, checksum } = await layFlat(mesh, []);
  line = { ms, refused: null, ...figures, checksum };
} catch (error) {
  line = { ms: performance.now() - began, refused: (error as Error).message };
}
process.stdout.write(
  `${JSON.stringify({ triangles: mesh.triangles.length / 3, peakMb: peakMb(), beforeMb, ...line })}\n`,
);
