// Reads the advance widths of DejaVu Sans out of its TrueType tables and writes src/geom/font-widths.ts.
// Run again after a new version of the font package: node scripts/font-metrics.mjs
// Tables after the OpenType specification 1.9: head, hhea, hmtx, cmap (format 4), OS/2.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const FONT = fileURLToPath(new URL('../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf', import.meta.url));
const TARGET = fileURLToPath(new URL('../src/geom/font-widths.ts', import.meta.url));

/** First and last character of every block that is kept. */
const BLOCKS = [
  [0x20, 0x7e, 'Basic Latin'],
  [0xa0, 0x17f, 'Latin-1, Latin Extended-A'],
  [0x218, 0x21b, 'Romanian comma letters'],
  [0x2c6, 0x2dd, 'spacing accents'],
  [0x370, 0x3ff, 'Greek'],
  [0x400, 0x4ff, 'Cyrillic'],
  [0x1e80, 0x1e85, 'Welsh W'],
  [0x2000, 0x2064, 'general punctuation'],
  [0x2070, 0x2094, 'superscripts and subscripts'],
  [0x20a0, 0x20b5, 'currency'],
  [0x2100, 0x214b, 'letterlike, numero, trade mark'],
  [0x2150, 0x2189, 'fractions, Roman numerals'],
  [0x2190, 0x21ff, 'arrows'],
  [0x2200, 0x22ff, 'mathematical operators, minus'],
  [0x25a0, 0x25ff, 'geometric shapes'],
  [0x2610, 0x2612, 'ballot boxes'],
  [0x2640, 0x2642, 'signs'],
  [0x2713, 0x2717, 'check marks'],
];

const bytes = readFileSync(FONT);
const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
const tables = new Map();
for (let i = 0; i < view.getUint16(4); i += 1) {
  const at = 12 + 16 * i;
  tables.set(bytes.toString('latin1', at, at + 4), view.getUint32(at + 8));
}
const table = (name) => {
  const at = tables.get(name);
  if (at === undefined) throw new Error(`the font has no table ${name}`);
  return at;
};

const unitsPerEm = view.getUint16(table('head') + 18);
const hhea = table('hhea');
const ascent = view.getInt16(hhea + 4);
const descent = view.getInt16(hhea + 6);
const widthCount = view.getUint16(hhea + 34);
const widthOf = (glyph) => view.getUint16(table('hmtx') + 4 * Math.min(glyph, widthCount - 1));

/** The capital height, or the top of the H where the OS/2 table is too old to hold it. */
function capHeightOf() {
  const os2 = table('OS/2');
  if (view.getUint16(os2) >= 2) return view.getInt16(os2 + 88);
  const glyph = glyphOf(0x48);
  const long = view.getInt16(table('head') + 50) === 1;
  const offset = long ? view.getUint32(table('loca') + 4 * glyph) : 2 * view.getUint16(table('loca') + 2 * glyph);
  return view.getInt16(table('glyf') + offset + 8);
}

function glyphOf(code) {
  const cmap = table('cmap');
  for (let i = 0; i < view.getUint16(cmap + 2); i += 1) {
    const at = cmap + view.getUint32(cmap + 4 + 8 * i + 4);
    if (view.getUint16(at) !== 4) continue;
    const segments = view.getUint16(at + 6) / 2;
    for (let s = 0; s < segments; s += 1) {
      if (code > view.getUint16(at + 14 + 2 * s)) continue;
      const start = view.getUint16(at + 16 + 2 * segments + 2 * s);
      if (code < start) return 0;
      const delta = view.getUint16(at + 16 + 4 * segments + 2 * s);
      const rangeAt = at + 16 + 6 * segments + 2 * s;
      const range = view.getUint16(rangeAt);
      if (range === 0) return (code + delta) & 0xffff;
      const glyph = view.getUint16(rangeAt + range + 2 * (code - start));
      return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
    }
  }
  return 0;
}

const runs = BLOCKS.map(([first, last, name]) => {
  const widths = [];
  for (let code = first; code <= last; code += 1) widths.push(widthOf(glyphOf(code)));
  const lines = [];
  for (let i = 0; i < widths.length; i += 24) lines.push(`      ${widths.slice(i, i + 24).join(', ')},`);
  return `  {\n    first: 0x${first.toString(16)}, // ${name}\n    // prettier-ignore\n    widths: [\n${lines.join('\n')}\n    ],\n  },`;
});

writeFileSync(
  TARGET,
  `// Written by scripts/font-metrics.mjs from DejaVuSans.ttf (dejavu-fonts-ttf, free Bitstream Vera and Arev terms). Not edited by hand.

/** Font units in one em. */
export const UNITS_PER_EM = ${unitsPerEm};

/** Height of a capital letter, of the tallest accent's line and of the deepest descender's (negative), font units. */
export const CAP_HEIGHT_UNITS = ${capHeightOf()};
export const ASCENT_UNITS = ${ascent};
export const DESCENT_UNITS = ${descent};

/** Advance width of the box that stands for a missing character, font units. */
export const MISSING_WIDTH_UNITS = ${widthOf(0)};

/** Advance widths of characters that follow each other, beginning with \`first\`, font units. */
export interface WidthRun {
  readonly first: number;
  readonly widths: readonly number[];
}

/** In rising order of \`first\`. */
export const WIDTH_RUNS: readonly WidthRun[] = [
${runs.join('\n')}
];
`,
);
