import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { ROOT, runCli, scratchFolder } from './run-cli.ts';

interface Report {
  readonly sheets: readonly { readonly name: { readonly stock: string }; readonly label?: string }[];
  readonly foamLayout: {
    readonly foams: readonly { readonly bought: number; readonly inHand: number }[];
    readonly odd?: { readonly unlaid: readonly unknown[] };
  };
}

it('lays on the foam in hand, says what has no room, and writes both into the report', () => {
  const folder = scratchFolder();
  const [shelf, out] = [join(folder, 'shelf.json'), join(folder, 'out')];
  mkdirSync(out);
  const shape = { kind: 'outline', points: [0, 0, 420, 0, 420, 120, 200, 230, 0, 230] };
  const sheet = { id: 'left', name: 'left of the maul', foam: 'eva-6', shape, count: 1 };
  writeFileSync(shelf, JSON.stringify([sheet]));
  const words = ['make', join(ROOT, 'samples/bracer.obj'), '--unit', 'mm', '--thickness', '6', '--out', out];
  const seams = ['--seams', join(ROOT, 'samples/bracer.seams.json'), '--stock', shelf];
  const report = (): Report => JSON.parse(readFileSync(join(out, 'report.json'), 'utf8')) as Report;
  const both = runCli(...words, ...seams, '--lay-out-moves', '50');
  expect([both.stderr, both.status]).toEqual(['', 0]);
  expect(both.stdout).toMatch(/1 sheet to buy, 1 sheet in hand; the last is filled to/);
  expect(report().foamLayout.foams).toMatchObject([{ bought: 1, inHand: 1 }]);
  expect(report().sheets[0]).toMatchObject({ name: { stock: 'left' }, label: 'left of the maul' });
  const project = join(out, 'project.foamloft.json');
  const none = runCli('make', project, '--no-buying', '--out', join(folder, 'again'));
  expect(none.status).toBe(0);
  expect(none.stdout).toMatch(/warning: The sheets of EVA 6 mm.* in hand have no room for/);
});
