import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { ByteScanner } from '../../../src/steps/read/byte-scanner.ts';
import { bytesOf } from './text-model.ts';

const scan = (text: string): ByteScanner => new ByteScanner(bytesOf(text), 0);

describe('ByteScanner.number', () => {
  it('reads numbers to the last bit, as the language itself does', () => {
    const random = seededRandom(5);
    const words = [
      '0',
      '-0',
      '1e5',
      '1E+05',
      '-.5',
      '5.',
      '+7',
      '0.1',
      '123456789012345678',
      '9007199254740993',
      '4.9e-324',
      '1e-400',
      '0.30000000000000004',
      '000012.500',
      '1.7976931348623157e308',
      '1e22',
      '1e23',
      '0.000000000000000000000001',
      '5e-00012',
    ];
    for (let i = 0; i < 3000; i += 1) {
      const value = (random() - 0.5) * 10 ** Math.floor(60 * random() - 30);
      words.push(String(value), value.toFixed(6), value.toExponential(8), value.toPrecision(17));
    }
    const scanner = scan(words.join(' '));
    for (const word of words) {
      expect([word, scanner.number()]).toEqual([word, Number(word)]);
      expect(scanner.kind).toBe('number');
    }
    scanner.number();
    expect(scanner.kind).toBe('none');
  });

  it('tells what is no number and what is no finite one, and stands before it', () => {
    for (const word of ['abc', '1,5', '1.2.3', '0x10', '1e', '1e+', '-', '.', '--1', '1d5', '1_000', '12abc', '٣']) {
      const scanner = scan(`  ${word}\n2`);
      scanner.number();
      expect([word, scanner.kind, scanner.at]).toEqual([word, 'not-a-number', 2]);
    }
    for (const word of [
      'nan',
      'NaN',
      '-nan(ind)',
      'inf',
      '-Infinity',
      '1.#QNAN',
      '-1.#IND00',
      '1e999',
      '-1e309',
      '****',
    ]) {
      const scanner = scan(`${word} 2`);
      scanner.number();
      expect([word, scanner.kind, scanner.at]).toEqual([word, 'not-finite', 0]);
    }
  });

  it('ends with the line, with a remark, and goes on after a backslash', () => {
    const scanner = scan('1 \\\n 2\\\r\n3 # 4\n5');
    expect([scanner.number(), scanner.number(), scanner.number()]).toEqual([1, 2, 3]);
    expect(scanner.line).toBe(3);
    scanner.number();
    expect(scanner.kind).toBe('none');
    scanner.nextLine();
    expect([scanner.number(), scanner.line]).toEqual([5, 4]);
  });
});

describe('ByteScanner', () => {
  it('counts lines however they end', () => {
    for (const end of ['\n', '\r\n', '\r']) {
      const scanner = scan(['a', '', 'b c', 'd'].join(end));
      const seen: [string, number][] = [];
      while (!scanner.isAtEnd) {
        if (scanner.skipBlanks()) seen.push([scanner.word(), scanner.line]);
        scanner.nextLine();
      }
      expect(seen).toEqual([
        ['a', 1],
        ['b', 3],
        ['d', 4],
      ]);
    }
  });

  it('gives the rest of a line as text, backslashes and all', () => {
    const scanner = scan('mtllib C:\\paint\\\nv');
    scanner.word();
    expect(scanner.rest(100)).toBe('C:\\paint\\');
    scanner.nextLine();
    expect(scanner.word()).toBe('v');
  });

  it('always moves on', () => {
    const scanner = new ByteScanner(
      Uint8Array.from({ length: 256 }, (_, i) => i),
      0,
    );
    for (let steps = 0; !scanner.isAtEnd; steps += 1) {
      expect(steps).toBeLessThan(600);
      if (scanner.skipBlanks()) scanner.skipWord();
      else scanner.nextLine();
    }
  });
});
