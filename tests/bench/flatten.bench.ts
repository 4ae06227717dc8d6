// What laying flat costs and gives: npm run bench:flatten [-- words]
//   energies   energy of every reference patch beside the best of the reference program
//   times      time to full quality on about 1k, 5k, 20k and 100k triangles beside C++
//   again      flat again after a stretch of a seam was dragged, on pieces of about 5k and 20k triangles
//   costs      what squash prices and evening out do to stretch, squash and scale
//   large      half a million and a million triangles in one piece; only when it is named
//   rounds=7   pairs of runs for each time; most=100000 leaves larger patches out of the times
// The reference program is built when a C++ compiler and its libraries are there; else our own figures stand alone.
import { againTable } from './again-table.ts';
import { readBenchWords } from './bench-words.ts';
import { costTable } from './cost-table.ts';
import { energyTable } from './energy-table.ts';
import { largeTable } from './large-table.ts';
import { buildReference } from './reference-program.ts';
import { timeTable } from './time-table.ts';

const USUAL = ['energies', 'times', 'again', 'costs'] as const;
const words = readBenchWords(process.argv.slice(2), [...USUAL, 'large'], USUAL);
const reference = buildReference();
const program = 'path' in reference ? reference.path : null;
if ('missing' in reference) {
  process.stdout.write(
    `No reference program: ${reference.missing} is missing (Debian: apt-get install g++ libeigen3-dev libcgal-dev). Our own figures alone:\n\n`,
  );
}
const make = {
  energies: () => energyTable(program),
  times: () => timeTable(program, words),
  again: () => againTable(words),
  costs: () => costTable(),
  large: () => Promise.resolve(largeTable()),
} as const;
for (const table of words.tables) process.stdout.write(`${await make[table]()}\n`);
