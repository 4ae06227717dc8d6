// Very large pieces in one: wall time and peak memory at full quality, each in a process of its own.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { LargePiece } from './large-piece.bench.ts';
import { textTable } from './text-table.ts';
import { msText } from './times.ts';

const PIECES = [
  { from: 'mask-5k', parts: 10 },
  { from: 'hemisphere-2k', parts: 16 },
  { from: 'mask-5k', parts: 14 },
  { from: 'hemisphere-2k', parts: 23 },
] as const;

/** Up to this many triangles the limits below hold; above, the piece must only come out or be refused in words. */
const LIMITED = 600_000;
const MOST_SECONDS = 60;
const MOST_MB = 2000;

const RUN_TS = fileURLToPath(new URL('../../scripts/run-ts.mjs', import.meta.url));
const ONE_PIECE = fileURLToPath(new URL('large-piece.bench.ts', import.meta.url));

export function largeTable(): string {
  const rows = PIECES.map(({ from, parts }) => {
    const run = spawnSync(process.execPath, [RUN_TS, ONE_PIECE, from, String(parts)], { encoding: 'utf8' });
    if (run.status !== 0) return [`${from} in ${parts}`, '', '', '', '', '', '', '', 'NO', lastLine(run.stderr)];
    const piece = JSON.parse(run.stdout) as LargePiece;
    const memory = [piece.peakMb, piece.peakMb - piece.beforeMb].map((mb) => mb.toFixed(0));
    const first = [from, String(piece.triangles), msText(piece.ms / 1000), ...memory];
    if (piece.refused !== null) return [...first, '', '', '', 'refused', piece.refused];
    const isSmallEnough = piece.ms <= 1000 * MOST_SECONDS && piece.peakMb <= MOST_MB;
    const isGood = piece.flips === 0 && piece.converged && (piece.triangles > LIMITED || isSmallEnough);
    return [
      ...first,
      piece.energy.toFixed(7),
      String(piece.steps),
      String(piece.flips),
      isGood ? 'yes' : 'NO',
      piece.checksum,
    ];
  });
  const head = [
    'patch',
    'triangles',
    'seconds',
    'peak MB',
    'of it for this',
    'energy',
    'steps',
    'flips',
    'holds',
    'checksum',
  ];
  return `Large pieces in one; to hold, one of 500,000 triangles takes at most ${MOST_SECONDS} s and ${MOST_MB} MB in all, settles and has no flip\n${textTable(head, rows)}`;
}

const lastLine = (text: string): string => text.trim().split('\n').at(-1) ?? '';
