import { describe, expect, it } from 'vitest';
import lock from '../../package-lock.json' with { type: 'json' };
import known from '../../shared/advisories.json' with { type: 'json' };
import {
  faultsOf,
  isAllowed,
  isBelow,
  noticesFor,
  otherRegistries,
  readDependencies,
  type Advisory,
} from '../../scripts/lib/dependencies.mjs';

const dependencies = readDependencies(lock);
const advisories: readonly Advisory[] = known.advisories;
const HINT = 'see: npm run dependencies';

describe('the packages of the lock file', () => {
  it('are all of the registry, held to their bytes, under terms that were allowed', () => {
    expect(dependencies.length).toBeGreaterThan(100);
    expect(faultsOf(dependencies), HINT).toEqual([]);
    expect(otherRegistries()).toEqual([]);
  });

  it('need no script when they are installed', () => {
    // core-js thanks its sponsors there, and is never built in: it stands behind what the PDF library would load for web pages.
    const scripted = dependencies.filter((it) => it.hasInstallScript && !it.isOptional);
    expect(scripted.map(({ name }) => name)).toEqual([]);
  });

  it('have no known notice against them that nobody has looked into', () => {
    const open = noticesFor(dependencies, advisories).filter(({ standing }) => standing === undefined);
    expect(
      open.map(({ package: name, version, id }) => `${name} ${version} ${id}`),
      HINT,
    ).toEqual([]);
  });

  it('are the ones that explained notices speak of', () => {
    const holding = new Set(noticesFor(dependencies, advisories).map(({ id }) => id));
    const idle = advisories.filter(({ id, standing }) => standing !== undefined && !holding.has(id));
    expect(
      idle.map(({ id }) => id),
      'a reason that no pinned version needs any more',
    ).toEqual([]);
  });
});

describe('what must not be', () => {
  const good = { version: '1.2.3', license: 'MIT', integrity: `sha512-${'a'.repeat(86)}==` };
  const faults = (it: object): string[] =>
    faultsOf(readDependencies({ packages: { '': {}, 'node_modules/a': { ...good, ...it } } }));

  it('is told in a sentence', () => {
    expect(faults({})).toEqual([]);
    expect(faults({ license: 'GPL-3.0' })).toEqual(['a 1.2.3 has terms nobody has allowed: GPL-3.0.']);
    expect(faults({ license: undefined })).toEqual(['a 1.2.3 has terms nobody has allowed: none.']);
    expect(faults({ license: 'MPL-2.0' })).toHaveLength(1);
    expect(faults({ license: 'MPL-2.0', dev: true })).toEqual([]);
    expect(faults({ resolved: 'git+ssh://git@elsewhere.example/a.git' })).toEqual([
      'a 1.2.3 comes from git+ssh://git@elsewhere.example/a.git.',
    ]);
    expect(faults({ resolved: 'https://elsewhere.example/a.tgz' })).toHaveLength(1);
    expect(faults({ link: true })).toEqual(['a 1.2.3 comes from a folder.']);
    expect(faults({ integrity: undefined })).toEqual(['a 1.2.3 is not held to its bytes by a SHA-512.']);
    expect(faults({ integrity: 'sha1-abc=' })).toHaveLength(1);
    expect(faults({ version: '*' })).toHaveLength(1);
  });

  it('is measured by each part of its terms', () => {
    expect(isAllowed('(MPL-2.0 OR Apache-2.0)', false)).toBe(true);
    expect(isAllowed('(MIT AND Zlib)', false)).toBe(true);
    expect(isAllowed('MIT AND GPL-3.0', true)).toBe(false);
  });

  it('is told apart by versions', () => {
    expect(isBelow('4.10.38', '6.2.108')).toBe(true);
    expect(isBelow('4.10.38', '4.2.67')).toBe(false);
    expect(isBelow('1.2.0', '1.2.0')).toBe(false);
    expect(isBelow('1.2.0-beta.1', '1.2.0')).toBe(true);
    const [it] = readDependencies({ packages: { 'node_modules/b/node_modules/a': good } });
    const notice = { id: 'x', package: 'a', below: '1.3.0', what: 'breaks' };
    expect(noticesFor([it], [notice])).toEqual([{ ...notice, version: '1.2.3' }]);
    expect(noticesFor([it], [{ ...notice, below: '1.2.3' }])).toEqual([]);
  });
});
