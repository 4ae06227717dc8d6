import { fail, type Fail } from '../../base/result.ts';
import { hasBinaryStlSize, heldFacets, promisedFacets } from './stl-binary.ts';

/** How a file is to be read; `from` is the first byte after a byte order mark. */
export interface Sniffed {
  readonly ok: true;
  readonly as: 'obj' | 'stl-ascii' | 'stl-binary';
  readonly from: number;
}

/** How much of a text is looked at to tell what it is. */
const LOOK_BYTES = 1 << 16;

/** How much of a file is looked at to tell text from bytes. */
const TEXT_BYTES = 1 << 12;

/**
 * Tells what a file is by its size and its content; the ending of its name only decides where the content leaves a doubt.
 * An exact size makes a binary STL. Text is an ASCII STL when it begins with `solid` and has facets, whatever its name.
 */
export function sniffFormat(bytes: Uint8Array, fileName: string): Sniffed | Fail {
  if (bytes.length === 0) return fail('read/empty', 'The file is empty: save or copy it again.');
  if (hasBinaryStlSize(bytes) && promisedFacets(bytes) !== 0) return { ok: true, as: 'stl-binary', from: 0 };
  const other = OTHER_BYTES.find(
    ({ begins, holds }) => hasAt(bytes, 0, begins) && (holds === undefined || holdsWord(bytes, holds)),
  );
  if (other !== undefined) return otherFormat(other.what, other.remedy);
  const wide = wideText(bytes);
  if (wide) {
    return fail(
      'read/text-encoding',
      'The file is text in UTF-16, two bytes a letter: save it as plain text or UTF-8, or export the sculpt again.',
    );
  }
  if (bytes.every((byte) => byte === 0)) {
    return fail(
      'read/only-zeros',
      'The file holds nothing but zeros, as after a save that went wrong: save or copy it again.',
    );
  }
  const ending = endingOf(fileName);
  return isText(bytes) ? sniffText(bytes, ending) : sniffBinary(bytes, ending);
}

const endingOf = (fileName: string): string => /\.([^.]+)$/.exec(fileName)?.[1].toLowerCase() ?? '';

function sniffText(bytes: Uint8Array, ending: string): Sniffed | Fail {
  const from = hasAt(bytes, 0, [0xef, 0xbb, 0xbf]) ? 3 : 0;
  const text = new TextDecoder('utf-8').decode(bytes.subarray(from, from + LOOK_BYTES));
  const begin = text.trimStart().slice(0, 400);
  const other = OTHER_TEXTS.find(({ begins }) => begins.test(begin));
  if (other !== undefined) return otherFormat(other.what(text), other.remedy);
  const isSolid = /^solid\b/i.test(begin);
  if ((isSolid && /^\s*(facet|endsolid)\b/im.test(text)) || /^facet\s+normal\b/i.test(begin))
    return { ok: true, as: 'stl-ascii', from };
  if (ending === 'obj' || /^[ \t]*(v|f)[ \t]+[-+.\d]/m.test(text)) return { ok: true, as: 'obj', from };
  if (isSolid) return { ok: true, as: 'stl-ascii', from };
  return unknown();
}

function sniffBinary(bytes: Uint8Array, ending: string): Sniffed | Fail {
  const promised = promisedFacets(bytes) ?? 0;
  const held = heldFacets(bytes);
  const isNear = promised > 0 && held >= promised / 100 && held <= 100 * promised;
  if (ending === 'stl' || hasAt(bytes, 0, letters('solid')) || isNear) return { ok: true, as: 'stl-binary', from: 0 };
  return unknown();
}

const unknown = (): Fail =>
  fail('read/unknown-format', 'The file is neither OBJ nor STL: export the sculpt in one of the two.');

const EXPORT_MESH = 'export the sculpt as OBJ or STL';

const otherFormat = (what: string, remedy = EXPORT_MESH): Fail =>
  fail('read/other-format', `The file looks like ${what}, not like OBJ or STL: ${remedy}.`);

const letters = (word: string): readonly number[] => Array.from(word, (letter) => letter.charCodeAt(0));

const hasAt = (bytes: Uint8Array, at: number, sequence: readonly number[]): boolean =>
  sequence.every((byte, i) => bytes[at + i] === byte);

const holdsWord = (bytes: Uint8Array, word: string): boolean =>
  new TextDecoder('latin1').decode(bytes.subarray(0, LOOK_BYTES)).includes(word);

interface OtherBytes {
  readonly begins: readonly number[];
  /** A word somewhere in the first bytes. */
  readonly holds?: string;
  readonly what: string;
  readonly remedy?: string;
}

const UNPACK = 'unpack it and choose the mesh inside';

/** First bytes of files that end up beside meshes. */
const OTHER_BYTES: readonly OtherBytes[] = [
  { begins: [0x89, ...letters('PNG')], what: 'a PNG picture' },
  { begins: [0xff, 0xd8, 0xff], what: 'a JPEG picture' },
  { begins: letters('GIF8'), what: 'a GIF picture' },
  { begins: letters('RIFF'), what: 'a picture, sound or film' },
  { begins: letters('PK\u0003\u0004'), holds: '3dmodel.model', what: 'a 3MF package' },
  { begins: letters('PK\u0003\u0004'), what: 'a zip archive', remedy: UNPACK },
  { begins: [0x1f, 0x8b], what: 'a gzip archive', remedy: UNPACK },
  { begins: letters('7z\u00bc\u00af'), what: 'a 7z archive', remedy: UNPACK },
  { begins: letters('Rar!'), what: 'a rar archive', remedy: UNPACK },
  { begins: letters('glTF'), what: 'a binary glTF model' },
  { begins: letters('%PDF'), what: 'a PDF' },
  { begins: letters('Kaydara FBX'), what: 'an FBX scene' },
  { begins: letters('BLENDER'), what: 'the working file of a modelling program' },
  { begins: letters('8BPS'), what: 'a layered picture' },
];

interface OtherText {
  readonly begins: RegExp;
  readonly what: (text: string) => string;
  readonly remedy?: string;
}

/** Beginnings of texts that are something else. */
const OTHER_TEXTS: readonly OtherText[] = [
  { begins: /^[{[]/, what: (text) => (/"asset"\s*:/.test(text) ? 'a glTF model' : 'JSON data') },
  { begins: /^</, what: nameOfXml },
  { begins: /^ply\s/, what: () => 'a PLY mesh' },
  { begins: /^(ST|N|C|4)*OFF\s/, what: () => 'an OFF mesh' },
  { begins: /^ISO-10303-21/, what: () => 'a STEP model' },
  { begins: /^#VRML/, what: () => 'a VRML scene' },
  { begins: /^%PDF/, what: () => 'a PDF' },
  { begins: /^; FBX/, what: () => 'an FBX scene' },
  { begins: /^newmtl\s/m, what: () => 'the material file of an OBJ', remedy: 'choose the .obj file beside it' },
  { begins: /^\s*0\s*\r?\n\s*SECTION/, what: () => 'a DXF drawing' },
];

function nameOfXml(text: string): string {
  if (/<svg[\s>]/i.test(text)) return 'an SVG drawing';
  if (/<html[\s>]|<!doctype html/i.test(text)) return 'a web page (perhaps a failed download)';
  if (/<COLLADA[\s>]/.test(text)) return 'a COLLADA scene';
  if (/<amf[\s>]/i.test(text)) return 'an AMF model';
  if (/<model[\s>]/.test(text)) return 'the inside of a 3MF package';
  return 'XML';
}

/** True where text is written with two bytes a letter: by its byte order mark, or by every second byte being zero. */
function wideText(bytes: Uint8Array): boolean {
  if (hasAt(bytes, 0, [0xff, 0xfe]) || hasAt(bytes, 0, [0xfe, 0xff])) return true;
  const look = bytes.subarray(0, 64);
  if (look.length < 8) return false;
  return [0, 1].some((odd) => look.every((byte, i) => (i % 2 === odd ? byte >= 9 && byte < 127 : byte === 0)));
}

/** One byte in this many may be one that text never has, as a name typed in an odd way brings. */
const STRAY_BYTES = 32;

function isText(bytes: Uint8Array): boolean {
  const look = bytes.subarray(0, TEXT_BYTES);
  let strays = 0;
  for (const byte of look) if (byte < 32 && (byte < 9 || byte > 13) && byte !== 27) strays += 1;
  return STRAY_BYTES * strays <= look.length;
}
