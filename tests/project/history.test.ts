import { describe, expect, it } from 'vitest';
import { History, MOST_LEFT, MOST_STEPS } from '../../src/project/history.ts';
import { renameProject, setThickness } from '../../src/project/commands.ts';
import type { Command } from '../../src/project/commands.ts';
import { fetchVersion, keepVersion, removeVersion, renameVersion } from '../../src/project/kept-commands.ts';
import { MOST_VERSIONS, versionsOf } from '../../src/project/kept-version.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project } from '../../src/project/project.ts';
import { forAll } from '../support/for-all.ts';

const first = newProject('helm', { hash: 'a'.repeat(64), fileName: 'helm.obj', format: 'obj' });
const NOON = '2026-01-31T12:00:00Z';

/** A change that can be told from every other. */
const named = (name: string): Command => ({ label: name, apply: (project) => ({ ...project, name }) });

const begun = (...names: string[]): History => {
  const history = new History(first);
  for (const name of names) history.run(named(name));
  return history;
};

const linesOf = ({ trail }: History): string[] => trail.steps.map(({ project }) => project.name);
const leftOf = ({ trail }: History): string[][] => trail.left.map(({ steps }) => steps.map(({ label }) => label ?? ''));
const idOf = (history: History, label: string): number =>
  [...history.trail.steps, ...history.trail.left.flatMap(({ steps }) => steps)].find((step) => step.label === label)
    ?.id ?? -1;

describe('walking', () => {
  it('goes to any step as so many undos, and forward again', () => {
    const history = begun('A', 'B', 'C');
    const end = history.project;
    history.goTo(idOf(history, 'A'));
    expect([history.project.name, history.undoLabel, history.redoLabel]).toEqual(['A', 'A', 'B']);
    expect(linesOf(history)).toEqual(['helm', 'A', 'B', 'C']);
    history.goTo(0);
    expect(history.project).toBe(first);
    history.goTo(idOf(history, 'C'));
    expect(history.project).toBe(end);
    history.goTo(99);
    expect(history.project).toBe(end);
  });

  it('leaves behind what was taken back once something else is done, and fetches it again with nothing lost', () => {
    const history = begun('A', 'B', 'C');
    history.goTo(idOf(history, 'A'));
    history.run(named('D'));
    expect(linesOf(history)).toEqual(['helm', 'A', 'D']);
    expect(leftOf(history)).toEqual([['B', 'C']]);
    expect(history.trail.left[0].after?.label).toBe('A');
    history.goTo(idOf(history, 'B'));
    expect([history.project.name, history.redoLabel]).toEqual(['B', 'C']);
    expect(leftOf(history)).toEqual([['D']]);
  });

  it('tells when each step was done, a drag when it ended', () => {
    const history = new History(first, 1000);
    history.run(setThickness(7), 2000);
    history.run(setThickness(8), 3000);
    history.run(named('A'), 4000);
    expect(history.trail.steps.map(({ atMs }) => atMs)).toEqual([1000, 3000, 4000]);
    expect(history.trail).toBe(history.trail);
  });

  it('keeps all that was ever done, against a tree of our own', () =>
    forAll(
      (rand) => Array.from({ length: 30 }, () => [rand(), rand()] as const),
      (moves) => {
        const history = new History(first);
        const tree = new Tree();
        for (const [kind, which] of moves) {
          if (kind < 0.45) {
            const name = `step ${tree.size}`;
            history.run(named(name));
            tree.add(name);
          } else if (kind < 0.65) {
            history.undo();
            tree.up();
          } else if (kind < 0.75) {
            history.redo();
            tree.down();
          } else {
            const name = tree.nameAt(which);
            history.goTo(name === 'helm' ? 0 : idOf(history, name));
            tree.go(name);
          }
          expect(history.project.name).toBe(tree.at);
          expect(linesOf(history)).toEqual(tree.line());
          const kept = [...linesOf(history), ...leftOf(history).flat()];
          expect(kept.toSorted()).toEqual(tree.names().toSorted());
        }
      },
    ));

  it('lets go of the oldest, and says so', () => {
    const history = begun(...Array.from({ length: MOST_STEPS + 2 }, (_, i) => `A${i}`));
    expect(history.trail.steps).toHaveLength(MOST_STEPS + 1);
    expect(history.trail.isCutShort).toBe(true);
    for (let i = 0; i <= MOST_LEFT; i += 1) {
      history.undo();
      history.run(named(`B${i}`));
    }
    expect(history.trail.left).toHaveLength(MOST_LEFT);
    expect(history.trail.left[0].steps[0].label).toBe(`B${MOST_LEFT - 1}`);
  });

  it('costs little: fifty steps share all that they did not change', () => {
    const large = { ...first, parts: [{ ...first.parts[0], regions: [] }] };
    const history = new History(large);
    for (let i = 0; i < 50; i += 1) history.run(named(`A${i}`));
    const seams = new Set(history.trail.steps.map(({ project }) => project.parts[0].seams));
    const foams = new Set(history.trail.steps.map(({ project }) => project.foams));
    expect([seams.size, foams.size]).toEqual([1, 1]);
  });
});

describe('kept versions', () => {
  const namesOf = (project: Project): string[] => versionsOf(project).map(({ name }) => name);

  it('stay when anything else is undone, also what was done before', () => {
    const history = begun('A');
    history.run(keepVersion('first try', NOON));
    history.run(named('B'));
    history.undo();
    history.undo();
    expect(history.project.name).toBe('helm');
    expect(namesOf(history.project)).toEqual(['first try']);
    history.redo();
    history.redo();
    expect([history.project.name, ...namesOf(history.project)]).toEqual(['B', 'first try']);
  });

  it('are taken back by undo as long as keeping was the last thing done, and come again by redo', () => {
    const history = begun('A');
    history.run(keepVersion('first try', NOON));
    expect(history.undoLabel).toBe('keep a version');
    history.undo();
    expect([history.project.name, ...namesOf(history.project)]).toEqual(['A']);
    expect(history.redoLabel).toBe('keep a version');
    history.undo();
    expect(history.redoLabel).toBe('A');
    history.redo();
    history.redo();
    expect([history.project.name, ...namesOf(history.project)]).toEqual(['A', 'first try']);
  });

  it('leave paper and the steps that were taken back as they are', () => {
    const history = begun('A', 'B');
    history.undo();
    const { revision } = history.project;
    history.run(keepVersion('first try', NOON));
    expect(history.project.revision).toBe(revision);
    history.undo();
    expect(history.redoLabel).toBe('keep a version');
    history.redo();
    expect(history.redoLabel).toBe('B');
  });

  it('are fetched back as a step like any other, with their number kept free and cuts still ticked off', () => {
    const history = begun('A');
    history.run(keepVersion('first try', NOON));
    const [{ id, document }] = versionsOf(history.project);
    const done = [{ piece: 'piece-0', cut: 'AB12' }];
    history.run({ label: 'tick', apply: (project) => ({ ...project, name: 'B', done }) });
    history.run(fetchVersion(id));
    expect(history.project).toEqual({ ...document, revision: 4, done, versions: versionsOf(history.project) });
    expect(history.project.parts).toBe(document.parts);
    history.undo();
    expect([history.project.name, ...namesOf(history.project)]).toEqual(['B', 'first try']);
    expect(fetchVersion('none').apply(history.project)).toBe(history.project);
  });

  it('have names of their own, and come back when their removal is undone', () => {
    const history = begun('A');
    history.run(keepVersion('one', NOON));
    history.run(keepVersion('  one ', NOON));
    history.run(keepVersion('   ', NOON));
    history.run(keepVersion('two', NOON));
    const [one] = versionsOf(history.project);
    history.run(renameVersion(one.id, 'two'));
    expect(namesOf(history.project)).toEqual(['one', 'two']);
    history.run(renameVersion(one.id, 'uno'));
    history.run(removeVersion(one.id));
    expect(namesOf(history.project)).toEqual(['two']);
    history.undo();
    history.undo();
    expect(namesOf(history.project)).toEqual(['one', 'two']);
    history.run(removeVersion('version-2'));
    history.run(keepVersion('three', NOON));
    expect(new Set(versionsOf(history.project).map(({ id }) => id)).size).toBe(2);
  });

  it('are no more than can be read, and number on from the highest of them', () => {
    let project: Project = first;
    for (let i = 0; i <= MOST_VERSIONS; i += 1) project = keepVersion(`${i}`, NOON).apply(project);
    expect(versionsOf(project)).toHaveLength(MOST_VERSIONS);
    const document = { ...first, revision: 12 };
    const history = new History({ ...first, versions: [{ id: 'v', name: 'v', keptAt: NOON, document }] });
    expect(history.run(renameProject('other')).revision).toBe(13);
  });
});

/** Steps as a tree that remembers at each which way was gone last. */
class Tree {
  at = 'helm';
  readonly #parent = new Map<string, string>();
  readonly #next = new Map<string, string>();

  get size(): number {
    return this.#parent.size;
  }

  names(): string[] {
    return ['helm', ...this.#parent.keys()];
  }

  nameAt(share: number): string {
    const names = this.names();
    return names[Math.floor(share * names.length)];
  }

  add(name: string): void {
    this.#parent.set(name, this.at);
    this.#next.set(this.at, name);
    this.at = name;
  }

  up(): void {
    this.at = this.#parent.get(this.at) ?? this.at;
  }

  down(): void {
    this.at = this.#next.get(this.at) ?? this.at;
  }

  go(name: string): void {
    this.at = name;
    for (let own = name; ;) {
      const parent = this.#parent.get(own);
      if (parent === undefined) return;
      this.#next.set(parent, own);
      own = parent;
    }
  }

  line(): string[] {
    const line = ['helm'];
    for (let next = this.#next.get('helm'); next !== undefined; next = this.#next.get(next)) line.push(next);
    return line;
  }
}
