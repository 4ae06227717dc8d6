import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { DIST, windowFiles } from '../support/built-files.ts';

const keeper = readFileSync(`${DIST}keeper.js`, 'utf8');
const kept = [...keeper.matchAll(/\{url:[`"']([^`"']+)[`"'],revision:(?:null|[`"'](\w+)[`"'])\}/g)].map(
  ([, url, revision]) => ({ url, revision }),
);

describe('what is kept for the time without a network', () => {
  it('is every file that a window may ask for', () => {
    expect(kept.map(({ url }) => url).toSorted()).toEqual(windowFiles());
  });

  it('is told from its next version by its bytes, where its name does not tell', () => {
    for (const { url, revision } of kept) {
      const hash = createHash('sha256')
        .update(readFileSync(DIST + url))
        .digest('hex');
      if (revision === undefined) expect(url).toMatch(/^assets\/.+-[\w-]{8}\.\w+$/);
      else expect(hash.startsWith(revision), url).toBe(true);
    }
  });

  it('comes in the order it is wanted', () => {
    expect(kept[0].url).toBe('index.html');
    const at = (pattern: RegExp): number => kept.findIndex(({ url }) => pattern.test(url));
    expect(at(/^samples\//)).toBeGreaterThan(at(/^assets\/worker/));
    expect(at(/^licences/)).toBeGreaterThan(at(/^samples\//));
  });
});

interface Icon {
  readonly src: string;
  readonly sizes: string;
  readonly type: string;
  readonly purpose: string;
}

describe('the web manifest', () => {
  const manifest = JSON.parse(readFileSync(`${DIST}manifest.webmanifest`, 'utf8')) as {
    readonly icons: readonly Icon[];
  };

  it('names icons that are there, in the sizes it says', () => {
    for (const { src, sizes, type } of manifest.icons) {
      expect(existsSync(DIST + src), src).toBe(true);
      // Width and height stand in the first chunk of a PNG file (RFC 2083, 4.1.1).
      const bytes = readFileSync(DIST + src);
      if (type === 'image/png') expect(`${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`).toBe(sizes);
    }
  });

  it('has the sizes that systems ask for, and one that may be cut to any form', () => {
    expect(manifest.icons.map(({ sizes }) => sizes)).toEqual(expect.arrayContaining(['192x192', '512x512']));
    expect(manifest.icons.map(({ purpose }) => purpose)).toContain('maskable');
  });

  it('reaches no other place', () => {
    const page = readFileSync(`${DIST}index.html`, 'utf8');
    for (const text of [page, JSON.stringify(manifest)]) expect(text).not.toMatch(/(src|href|url)"?[=:]\s*"(\/|\w+:)/);
    expect(page).toContain('rel="manifest" href="./manifest.webmanifest"');
  });
});
