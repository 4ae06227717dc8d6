import { describe, expect, it } from 'vitest';
import licences from '../../shared/licences.json' with { type: 'json' };
import lockFile from '../../package-lock.json' with { type: 'json' };
import packageFile from '../../package.json' with { type: 'json' };

interface Locked {
  readonly version?: string;
  readonly license?: string;
}
const locked = lockFile.packages as Record<string, Locked | undefined>;
const { works } = licences;
const HINT = 'run: npm run licences';

describe('the list of licences', () => {
  it('names the versions of the lock file', () => {
    // The helpers of the bundler are no package of the lock file.
    for (const { name, version } of works.filter((work) => work.name !== '@oxc-project/runtime')) {
      expect(`${name} ${version}`, HINT).toBe(`${name} ${locked[`node_modules/${name}`]?.version}`);
    }
  });

  it('holds every package the program depends on', () => {
    const names = works.map(({ name }) => name);
    // lit itself only passes on what its three parts export.
    const missing = Object.keys(packageFile.dependencies).filter((name) => name !== 'lit' && !names.includes(name));
    expect(missing, 'not in the build: use it, or leave it out of the dependencies').toEqual([]);
  });

  it('gives terms and their words for each, in order', () => {
    expect(works.map(({ name }) => name)).toEqual([...works.map(({ name }) => name)].sort());
    for (const { name, licence, text } of works) {
      expect(licence, name).toMatch(/^[\w.() -]+$/);
      expect(licence, name).not.toMatch(/SEE|UNLICENSED|GPL/);
      expect(text.length, name).toBeGreaterThan(200);
    }
  });
});
