import { existsSync } from 'node:fs';
import { posix } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectFiles, readProjectFile, ROOT } from './project-files.ts';

// Put together here, so that this file does not hold the words it looks for.
const WORK_FOLDER = ['', 'work', ''].join('/');
const SHARED_ABOVE = /(?:\.\.\/)+shared\/[\w./-]*/g;

/** Hosts packages are taken from: the project may not depend on one of them by name. */
const PACKAGE_HOST = new RegExp(
  [
    '\\bregistry(\\.[\\w-]+)*\\.(com|cn|dev|io|net|org)\\b',
    '\\bunpkg\\.',
    '\\bjsdelivr\\.',
    '\\besm\\.sh\\b',
    '\\bskypack\\.',
  ].join('|'),
  'i',
);

/**
 * What a file says that only makes sense outside the project.
 * @param exists  whether a path, from the top of the project, is one of its files or folders
 */
function findOutsideWords(path: string, text: string, exists: (path: string) => boolean): string[] {
  const faults: string[] = [];
  const say = (index: number, what: string): void => {
    faults.push(`${path}:${text.slice(0, index).split('\n').length}: mentions ${what}`);
  };
  const host = PACKAGE_HOST.exec(text);
  if (host) say(host.index, host[0]);
  const work = text.indexOf(WORK_FOLDER);
  if (work >= 0) say(work, WORK_FOLDER);
  for (const match of text.matchAll(SHARED_ABOVE)) {
    const target = posix.join(posix.dirname(path), match[0]).replace(/[./]+$/, '');
    if (target.startsWith('..') || !exists(target)) say(match.index, match[0]);
  }
  return faults;
}

describe('the project stands alone', () => {
  const isText = (path: string): boolean => !/\.(png|jpg|ttf|woff2?|pdf|stl)$/.test(path);

  it('mentions nothing outside itself', () => {
    const faults = projectFiles()
      .filter(isText)
      .flatMap((path) => findOutsideWords(path, readProjectFile(path), (target) => existsSync(ROOT + target)));
    expect(faults).toEqual([]);
  });

  it('has a lock file without the addresses packages came from', () => {
    expect(readProjectFile('package-lock.json')).not.toContain('"resolved"');
  });
});

describe('the check', () => {
  const exists = (path: string): boolean => ['shared', 'shared/papers.json'].includes(path);
  const shared = ['..', 'shared'].join('/');
  const host = ['registry', 'example', 'org'].join('.');

  it.each([
    ['a package host', 'README.md', `one\nfrom https://${host}/three`, `README.md:2: mentions ${host}`],
    [
      'a delivery host',
      'index.html',
      `src="https://${['unpkg', 'com'].join('.')}"`,
      `index.html:1: mentions ${['unpkg', ''].join('.')}`,
    ],
    ['the folder above', 'src/a.ts', `// ${WORK_FOLDER}a.md`, `src/a.ts:1: mentions ${WORK_FOLDER}`],
    ['a folder beside', 'README.md', `see ${shared}/papers.json`, `README.md:1: mentions ${shared}/papers.json`],
    ['one that is missing', 'src/model/a.ts', `'../${shared}/b.md'`, `src/model/a.ts:1: mentions ../${shared}/b.md`],
  ])('finds %s', (_, path, text, fault) => expect(findOutsideWords(path, text, exists)).toEqual([fault]));

  it('passes the shared data of the project, and a registry of elements', () => {
    expect(
      findOutsideWords('src/model/a.ts', "import a from '../../shared/papers.json'; // registry. More", exists),
    ).toEqual([]);
    expect(findOutsideWords('src/app/a.ts', 'registry.get(name)', exists)).toEqual([]);
  });
});
