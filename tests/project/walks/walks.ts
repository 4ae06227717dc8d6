// Long walks through a document: node scripts/run-ts.mjs tests/project/walks/walks.ts [steps=14500 seeds=1,2,3]
// Every command there is, undo, redo, jumps to earlier steps and to ways that were left, against a plain model of the history; after each
// hundred steps saved, read, brought on from an older version and saved again, to the same bytes.
import process from 'node:process';
import { walk } from './walk.ts';

const words = new Map(process.argv.slice(2).map((word) => word.split('=') as [string, string]));
const steps = Number(words.get('steps') ?? 14_500);
const seeds = (words.get('seeds') ?? '1,2,3').split(',').map(Number);
let commands = 0;
let changes = 0;
for (const seed of seeds) {
  const begun = performance.now();
  const told = await walk(seed, steps, seed % 2 === 0 ? Infinity : 1000);
  const made = [...told.changed.values()].reduce((sum, n) => sum + n, 0);
  commands += told.commands;
  changes += made;
  const rare = [...told.changed].sort(([, a], [, b]) => a - b).slice(0, 3);
  console.log(
    `seed ${seed}: ${told.steps} steps, ${told.commands} commands of ${told.changed.size} kinds (${made} changed something; least ${rare.map(([name, n]) => `${name} ${n}`).join(', ')}), ` +
      `${told.undone} undo, ${told.redone} redo, ${told.walked} jumps, ${told.saved} times saved and read; at most ${told.ways} ways left, ${told.versions} versions${told.isCutShort ? ', oldest steps let go' : ''}; ${((performance.now() - begun) / 1000).toFixed(1)} s`,
  );
}
console.log(`${seeds.length} walks, ${commands} commands in all, ${changes} of them changed the document: no fault`);
