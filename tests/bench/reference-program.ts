import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const SOURCES = fileURLToPath(new URL('../reference/flatten/program/', import.meta.url));
const SOURCE_FILES = ['flatref.cpp', 'solve.hpp', 'mesh.hpp'] as const;
const CACHE = fileURLToPath(new URL('../../node_modules/.cache/flatten-reference/', import.meta.url));

/** Where Debian, hand-made installations and the Mac's package manager put headers. */
const HEADER_FOLDERS = ['/usr/include', '/usr/local/include', '/opt/homebrew/include'] as const;
const COMPILERS = ['g++', 'c++', 'clang++'] as const;

/** The reference program ready to run, or what it would take to build it. */
export type ReferenceProgram = { readonly path: string } | { readonly missing: string };

/** What the reference program tells of one method on one mesh. */
export interface ReferenceResult {
  readonly method: string;
  readonly ok: boolean;
  readonly note: string;
  /** Median of its own runs, ms. */
  readonly ms: number;
  /** Area-weighted mean of the symmetric Dirichlet energy at true scale; null where it found no shape. */
  readonly energy: number | null;
  readonly flips: number;
}

/** Builds the reference program unless it stands built from the same sources; about a minute. */
export function buildReference(): ReferenceProgram {
  const compiler = [process.env['CXX'], ...COMPILERS].find(
    (name) => name !== undefined && spawnSync(name, ['--version']).status === 0,
  );
  if (compiler === undefined) return { missing: 'a C++ compiler' };
  const eigen = HEADER_FOLDERS.flatMap((folder) => [join(folder, 'eigen3'), folder]).find((folder) =>
    existsSync(join(folder, 'Eigen/Sparse')),
  );
  if (eigen === undefined) return { missing: 'the headers of Eigen' };
  const library = HEADER_FOLDERS.find((folder) => existsSync(join(folder, 'CGAL/boost/graph/Seam_mesh.h')));
  if (library === undefined) return { missing: 'the headers of CGAL' };
  const flags = [
    ...['-std=c++17', '-O3', '-DNDEBUG', '-march=native', '-DCGAL_EIGEN3_ENABLED'],
    ...[eigen, library].filter((folder) => folder !== '/usr/include').map((folder) => `-I${folder}`),
  ];
  const hash = createHash('sha256').update([compiler, ...flags].join(' '));
  for (const name of SOURCE_FILES) hash.update(readFileSync(SOURCES + name));
  const path = join(CACHE, `flatref-${hash.digest('hex').slice(0, 12)}`);
  if (existsSync(path)) return { path };
  mkdirSync(CACHE, { recursive: true });
  process.stdout.write('Building the reference program, about a minute …\n');
  const built = spawnSync(compiler, [...flags, join(SOURCES, 'flatref.cpp'), '-o', path, '-lgmp', '-lmpfr'], {
    encoding: 'utf8',
  });
  if (built.status === 0) return { path };
  const fault = built.stderr.split('\n').find((line) => /error|undefined|cannot find/.test(line));
  return { missing: `what it needs to be built (${fault ?? built.stderr.slice(0, 200)})` };
}

export interface ReferenceRun {
  readonly objPath: string;
  readonly methods: readonly string[];
  /** Runs of each method; the median is told. It takes fewer by itself when one lasts seconds. */
  readonly reps: number;
  /** Vertex pairs to cut along, one pair a line. */
  readonly seamPath?: string;
  /** Share of the mean side by which no triangle may be closer to empty; sides are lengthened until it is so. */
  readonly mollify?: number;
}

/** Runs the reference program and waits for it. */
export function runReference(path: string, run: ReferenceRun): ReferenceResult[] {
  const words = [run.objPath, '--reps', String(run.reps), '--only', run.methods.join(',')];
  if (run.seamPath !== undefined) words.push('--seam', run.seamPath);
  if (run.mollify !== undefined) words.push('--mollify', String(run.mollify));
  return parseReference(execFileSync(path, words, { encoding: 'utf8', maxBuffer: 1 << 26 }));
}

/** Reads the lines the program prints, one JSON object for each method. */
export function parseReference(text: string): ReferenceResult[] {
  interface Line {
    readonly method: string;
    readonly ok: boolean;
    readonly note: string;
    readonly ms: number;
    readonly trueScale?: { readonly sd4: number | null; readonly flips: number };
  }
  return text
    .split('\n')
    .filter((line) => line.startsWith('{'))
    .map((line) => {
      const { method, ok, note, ms, trueScale } = JSON.parse(line) as Line;
      return { method, ok, note, ms, energy: trueScale?.sd4 ?? null, flips: trueScale?.flips ?? 0 };
    });
}
