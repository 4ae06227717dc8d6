import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

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
});
