import { fail, ok, type Result } from '../base/result.ts';

/** One element of an XML text; what is written between tags is left out, but for `text`. */
export interface XmlElement {
  /** As it stands, with its prefix. */
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlElement[];
  /** What is written in an element that holds no others, without the space round it; left out where that is nothing. */
  readonly text?: string;
}

/** Deeper than any drawing is nested by hand or program. */
const MOST_DEPTH = 256;
/** More elements than a drawing of seams has. */
const MOST_ELEMENTS = 100_000;

const NAME = /[A-Za-z_:][\w:.-]*/y;
const SPACE = /\s*/y;
const ATTRIBUTE = /\s+([A-Za-z_:][\w:.-]*)\s*=\s*(?:"([^"<]*)"|'([^'<]*)')/y;
/** A kind of document named by its address alone: it is passed over and nothing is loaded. */
const PLAIN_DOCTYPE = /<!DOCTYPE\s+[\w:.-]+(?:\s+(?:SYSTEM|PUBLIC))?(?:\s+(?:"[^"[\]]*"|'[^'[\]]*'))*\s*>/y;

const CDATA = '<![CDATA[';

const NAMED: ReadonlyMap<string, string> = new Map([
  ['amp', '&'],
  ['lt', '<'],
  ['gt', '>'],
  ['quot', '"'],
  ['apos', "'"],
]);

/**
 * Reads the elements and attributes of an XML text (XML 1.0), strictly and without loading anything. A text that defines entities of its own is
 * refused: a few lines of these can stand for gigabytes.
 * @returns the outermost element. Fails with `xml/unreadable`, telling where, `xml/entities` or `xml/too-large`.
 */
export function readXml(text: string): Result<XmlElement> {
  const open: {
    name: string;
    attributes: Map<string, string>;
    children: XmlElement[];
    text?: string;
    plain?: string;
  }[] = [];
  let root: XmlElement | null = null;
  let [at, count] = [text.startsWith('\uFEFF') ? 1 : 0, 0];

  while (at < text.length) {
    const next = text.indexOf('<', at);
    const between = text.slice(at, next < 0 ? text.length : next);
    if (open.length === 0 && between.trim() !== '') return unreadable(at, 'text stands outside of all elements');
    if (next < 0) break;
    at = next;
    const passed = passOver(text, at);
    if (passed !== null) {
      if (!passed.ok) return passed;
      const around = open.at(-1);
      if (around !== undefined && text.startsWith(CDATA, at))
        around.plain = (around.plain ?? '') + text.slice(at + CDATA.length, passed.value - 3);
      at = passed.value;
      continue;
    }
    if (text[at + 1] === '/') {
      const name = match(NAME, text, at + 2);
      const last = open.pop();
      if (name === null || last === undefined || last.name !== name[0]) return unreadable(at, 'a wrong end');
      const end = skipSpace(text, at + 2 + name[0].length);
      if (text[end] !== '>') return unreadable(end, 'an end without >');
      at = end + 1;
      const written = ((last.plain ?? '') + (plainText(between) ?? '')).trim();
      delete last.plain;
      if (last.children.length === 0 && written !== '') last.text = written;
      if (open.length === 0) root = last;
      continue;
    }
    const name = match(NAME, text, at + 1);
    if (name === null) return unreadable(at, '< without a name');
    if (root !== null) return unreadable(at, 'a second outermost element');
    count += 1;
    if (count > MOST_ELEMENTS || open.length >= MOST_DEPTH)
      return fail(
        'xml/too-large',
        `The file has more than ${MOST_ELEMENTS} elements or nests them deeper than ${MOST_DEPTH}: save the outlines alone.`,
      );
    const element = { name: name[0], attributes: new Map<string, string>(), children: [] as XmlElement[] };
    at += 1 + name[0].length;
    for (let found = match(ATTRIBUTE, text, at); found !== null; found = match(ATTRIBUTE, text, at)) {
      const value = plainText(found[2] ?? found[3]);
      if (value === null) return entities();
      if (element.attributes.has(found[1])) return unreadable(at, `${found[1]} given twice`);
      element.attributes.set(found[1], value);
      at += found[0].length;
    }
    at = skipSpace(text, at);
    open.at(-1)?.children.push(element);
    if (text.startsWith('/>', at)) {
      if (open.length === 0) root = element;
      at += 2;
    } else if (text[at] === '>') {
      open.push(element);
      at += 1;
    } else return unreadable(at, 'an element that does not end');
  }
  if (open.length > 0) return unreadable(text.length, `the end of ${open[open.length - 1].name} is missing`);
  return root === null ? unreadable(0, 'nothing is in it') : ok(root);
}

/** Comments, instructions, plain text and the kind of document. @returns where they end, null when none stands there. */
function passOver(text: string, at: number): Result<number> | null {
  for (const [begin, end] of [
    ['<!--', '-->'],
    [CDATA, ']]>'],
    ['<?', '?>'],
  ]) {
    if (!text.startsWith(begin, at)) continue;
    const stop = text.indexOf(end, at + begin.length);
    return stop < 0 ? unreadable(at, `${begin} without its end`) : ok(stop + end.length);
  }
  if (!text.startsWith('<!', at)) return null;
  const doctype = match(PLAIN_DOCTYPE, text, at);
  return doctype === null ? entities() : ok(at + doctype[0].length);
}

/** An attribute with its named and numbered characters put in; null where it names another. */
function plainText(value: string): string | null {
  if (!value.includes('&')) return value;
  let isKnown = true;
  const plain = value.replace(/&(#x[\da-fA-F]{1,6}|#\d{1,7}|\w*);?/g, (whole, name: string) => {
    const code = name.startsWith('#x') ? parseInt(name.slice(2), 16) : name.startsWith('#') ? Number(name.slice(1)) : 0;
    const known = name.startsWith('#') ? (code <= 0x10ffff ? String.fromCodePoint(code) : undefined) : NAMED.get(name);
    isKnown &&= known !== undefined && whole.endsWith(';');
    return known ?? '';
  });
  return isKnown ? plain : null;
}

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

const skipSpace = (text: string, at: number): number => at + (match(SPACE, text, at)?.[0].length ?? 0);

const unreadable = (at: number, why: string): Result<never> =>
  fail('xml/unreadable', `The file is not whole XML, at character ${at + 1}: ${why}. Save it again as plain SVG.`);

const entities = (): Result<never> =>
  fail('xml/entities', 'The file defines names of its own (entities), which are not read: save it again as plain SVG.');
