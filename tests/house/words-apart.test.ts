import { describe, expect, it } from 'vitest';
import { findWordFaults } from './find-words.ts';
import { projectFiles, readProjectFile } from './project-files.ts';

const elements = projectFiles('src/app/').filter(
  (path) => path.endsWith('.ts') && !path.endsWith('words.ts') && !path.startsWith('src/app/german/'),
);

describe('words of the window', () => {
  it('stand in tables and are read when something is drawn', () => {
    expect(elements.length).toBeGreaterThan(150);
    const faults = elements.flatMap((path) =>
      findWordFaults(path, readProjectFile(path)).map(({ line, what }) => `${path}:${line} ${what}`),
    );
    expect(faults).toEqual([]);
  });
});

describe('the check', () => {
  it.each([
    ['html`<p>Parts of ${x}</p>`', 'says “Parts of”'],
    ['html`<button aria-label="Close ${name}">×</button>`', 'says “Close”'],
    ['svg`<text>wide</text>`', 'says “wide”'],
    ['const LIST = [A_WORDS.heading];', 'reads A_WORDS when it is loaded'],
    ['class A { label = A_WORDS.heading; }', 'reads A_WORDS when it is loaded'],
  ])('finds %s', (text, what) => {
    expect(findWordFaults('src/app/a.ts', text).map((fault) => fault.what)).toEqual([what]);
  });

  it.each([
    '() => html`<p class="wide of it" title=${A_WORDS.title}>${A_WORDS.of(n)} mm</p>`',
    'const list = () => A_WORDS.heading;',
    "const KEY: keyof typeof A_WORDS.rows = 'name';",
    'class A { get label() { return A_WORDS.heading; } }',
    'html`${isOn ? html`<b>${x}</b>` : nothing} <kbd>Esc</kbd>`',
  ])('passes %s', (text) => {
    expect(findWordFaults('src/app/a.ts', text)).toEqual([]);
  });
});
