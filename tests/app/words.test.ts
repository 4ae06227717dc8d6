import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { WORDS } from '../../src/app/words.ts';

/** Words of graphics programs that makers need not know. */
const NEVER = /\b(mesh(es)?|uvs?|charts?|islands?|vert(ex|ices)|topolog\w*|polygons?|manifolds?)\b/i;

describe('words on the screen', () => {
  it('are trade words or plain ones', () => {
    const source = ['words', 'forming-words', 'rule-words']
      .map((name) => readFileSync(new URL(`../../src/app/${name}.ts`, import.meta.url), 'utf8'))
      .join('\n');
    const texts = source.match(/'(?:[^'\\\n]|\\.)*'|`[^`]*`/g) ?? [];
    // Paths of imports and the rule that replaces such words are no texts of the screen.
    const shown = texts.filter((text) => !text.includes('../') && !text.includes('./'));
    expect(shown.length).toBeGreaterThan(200);
    expect(shown.filter((text) => NEVER.test(text))).toEqual([]);
  });

  it('say a finding as the screen does: no repair in brackets, corners for vertices', () => {
    const text = 'There is a small hole with 3 edges: close it (repair: close hole), unless it is meant.';
    expect(WORDS.findings.text(text)).toBe('There is a small hole with 3 edges: close it, unless it is meant.');
    expect(WORDS.findings.text('The vertex 4 and two vertices')).toBe('The corner 4 and two corners');
  });
});
