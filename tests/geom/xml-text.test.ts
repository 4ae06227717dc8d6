import { describe, expect, it } from 'vitest';
import { readXml, type XmlElement } from '../../src/geom/xml-text.ts';
import { expectOk } from '../support/expect-ok.ts';

/** An element as plain lists: name, attributes, children, and the text where there is one. */
type Plain = readonly [string, Record<string, string>, readonly Plain[], string?];
const plain = ({ name, attributes, children, text }: XmlElement): Plain => {
  const three = [name, Object.fromEntries(attributes), children.map(plain)] as const;
  return text === undefined ? three : [...three, text];
};
const read = (text: string): Plain => plain(expectOk(readXml(text)));

function faultOf(text: string): string {
  const found = readXml(text);
  if (found.ok) throw new Error(`${text} was read`);
  return `${found.problem.code} ${found.problem.text}`;
}
const unreadable = (at: number, why: string): string =>
  `xml/unreadable The file is not whole XML, at character ${at}: ${why}. Save it again as plain SVG.`;
const ENTITIES =
  'xml/entities The file defines names of its own (entities), which are not read: save it again as plain SVG.';
const TOO_LARGE =
  'xml/too-large The file has more than 100000 elements or nests them deeper than 256: save the outlines alone.';

describe('readXml', () => {
  it('reads elements in elements with their attributes', () => {
    expect(read('<svg/>')).toEqual(['svg', {}, []]);
    expect(read('<a x="1" y=\'2\'><b/><c z="3"><d/></c ></a >')).toEqual([
      'a',
      { x: '1', y: '2' },
      [
        ['b', {}, []],
        ['c', { z: '3' }, [['d', {}, []]]],
      ],
    ]);
  });

  it('takes names and space in every way they may be written', () => {
    expect(read('\uFEFF \n<s:svg-1.a_b\n xml:a-1.b = "1"\t\n :c\n=\n\'"\' _d="\'" \n/>\n ')).toEqual([
      's:svg-1.a_b',
      { 'xml:a-1.b': '1', ':c': '"', _d: "'" },
      [],
    ]);
    expect(read('<a b="" c=\'\'></a>')).toEqual(['a', { b: '', c: '' }, []]);
  });

  it('keeps what is written in an element that holds no others', () => {
    expect(read('<a>  one\n two </a>')).toEqual(['a', {}, [], 'one\n two']);
    expect(read('<a> <b>x</b> y </a>')).toEqual(['a', {}, [['b', {}, [], 'x']]]);
    expect(read('<a>  </a>')).toEqual(['a', {}, []]);
    expect(read('<a>1 &lt; 2</a>')).toEqual(['a', {}, [], '1 < 2']);
    expect(read('<a><![CDATA[x < y & z]]></a>')).toEqual(['a', {}, [], 'x < y & z']);
    expect(read('<a><![CDATA[x]]><![CDATA[y]]> z</a>')).toEqual(['a', {}, [], 'xy z']);
    expect(read('<a><!-- no --><?no?>yes</a>')).toEqual(['a', {}, [], 'yes']);
    expect(readXml('<a><![CDATA[x]]></a>')).toMatchObject({
      ok: true,
      value: { name: 'a', attributes: new Map(), children: [], text: 'x' },
    });
  });

  it('passes over what is not drawn', () => {
    const head = '<?xml version="1.0"?> <!-- a > b -- c --> ';
    expect(read(`${head}<a/>`)).toEqual(['a', {}, []]);
    for (const type of [
      '<!DOCTYPE svg>',
      '<!DOCTYPE  svg  >',
      '<!DOCTYPE svg SYSTEM "a.dtd">',
      "<!DOCTYPE svg SYSTEM 'a.dtd' >",
      '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN"  "http://www.w3.org/x.dtd">',
      "<!DOCTYPE s:svg-1.0 PUBLIC 'x' 'y'>",
    ])
      expect(read(`${type}<a/><!-- end -->`)).toEqual(['a', {}, []]);
  });

  it('puts in the characters that are named or numbered', () => {
    expect(read('<a b="&amp;&lt;&gt;&quot;&apos;"/>')).toEqual(['a', { b: '&<>"\'' }, []]);
    expect(read('<a b="&#65;&#x42;&#x1F600;&#x10ffff;x"/>')).toEqual(['a', { b: 'AB\u{1F600}\u{10ffff}x' }, []]);
  });

  it.each([
    '<!DOCTYPE svg [<!ENTITY a "aaaa">]><a/>',
    '<!DOCTYPE svg SYSTEM "a" [<!ENTITY a "aaaa">]><a/>',
    '<!DOCTYPE svg SYSTEM "a[b"><a/>',
    '<!DOCTYPE svg "a>',
    '<!DOCTYPEsvg><a/>',
    '<!DOCTYPE><a/>',
    '<!ENTITY a "b"><a/>',
    '<a b="&nbsp;"/>',
    '<a b="&amp"/>',
    '<a b="a & b"/>',
    '<a b="&;"/>',
    '<a b="&#x110000;"/>',
    '<a b="&#;"/>',
    '<a b="&#x;"/>',
    '<a b="&nbsp;&amp;"/>',
    '<a b="&constructor;"/>',
    '<a b="&toString;"/>',
  ])('refuses names of its own: %s', (text) => expect(faultOf(text)).toBe(ENTITIES));

  it('leaves out words with names of their own, which no outline needs', () => {
    expect(read('<a>&nbsp;</a>')).toEqual(['a', {}, []]);
  });

  it.each([
    ['', 1, 'nothing is in it'],
    ['  <!-- x -->', 1, 'nothing is in it'],
    ['hello', 1, 'text stands outside of all elements'],
    ['x<a/>', 1, 'text stands outside of all elements'],
    ['<a/>x', 5, 'text stands outside of all elements'],
    ['\uFEFFx<a/>', 2, 'text stands outside of all elements'],
    ['<a/><b/>', 5, 'a second outermost element'],
    ['<a></a><b/>', 8, 'a second outermost element'],
    ['<a></b>', 4, 'a wrong end'],
    ['<a></ a>', 4, 'a wrong end'],
    ['</a>', 1, 'a wrong end'],
    ['<a/></a>', 5, 'a wrong end'],
    ['<a></a x>', 8, 'an end without >'],
    ['<a>< b/></a>', 4, '< without a name'],
    ['<1a/>', 1, '< without a name'],
    ['<a b="1" b="2"/>', 9, 'b given twice'],
    ['<a b="<"/>', 4, 'an element that does not end'],
    ['<a b=1/>', 4, 'an element that does not end'],
    ['<a b="1"c="2"/>', 9, 'an element that does not end'],
    ['<a b/>', 4, 'an element that does not end'],
    ['<a / >', 4, 'an element that does not end'],
    ['<a', 3, 'an element that does not end'],
    ['<a><b></b>', 11, 'the end of a is missing'],
    ['<a><b>', 7, 'the end of b is missing'],
    ['<!-- x', 1, '<!-- without its end'],
    ['<a><!--></a>', 4, '<!-- without its end'],
    ['<a><![CDATA[x]></a>', 4, '<![CDATA[ without its end'],
    ['<?xml >', 1, '<? without its end'],
  ])('says where and why %j is not whole', (text, at, why) => expect(faultOf(text)).toBe(unreadable(at, why)));

  it('takes 256 elements in each other and 100 000 in all, and no more', () => {
    const nested = (count: number): string => '<a>'.repeat(count) + '</a>'.repeat(count);
    expect(read(nested(256))[0]).toBe('a');
    expect(faultOf(nested(257))).toBe(TOO_LARGE);
    const many = (count: number): string => `<a>${'<b/>'.repeat(count - 1)}</a>`;
    expect(read(many(100_000))[2]).toHaveLength(99_999);
    expect(faultOf(many(100_001))).toBe(TOO_LARGE);
  });
});
