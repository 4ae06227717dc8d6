import { HOSTILE_FIGURES, HOSTILE_NAMES } from './hostile-values.ts';
import { below, bytesOf, oneOf, type Random } from './target.ts';

function figure(random: Random): string {
  const kind = random();
  if (kind < 0.7) return String(below(random, 12));
  if (kind < 0.95) return ((random() - 0.5) * 10 ** below(random, 4)).toPrecision(1 + below(random, 17));
  return oneOf(random, HOSTILE_FIGURES);
}

const figures = (random: Random, count: number): string =>
  Array.from({ length: count }, () => figure(random)).join(oneOf(random, [' ', ',', ', ']));

const UNITS = ['', '', 'mm', 'cm', 'in', 'pt', 'pc', 'px', '%', 'em', 'q', 'ex', 'foo'];
const length = (random: Random): string => figure(random) + oneOf(random, UNITS);

const escaped = (text: string): string => text.replace(/[&<>"]/g, (letter) => `&#${letter.charCodeAt(0)};`);

const PATH_COMMANDS = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, A: 7, Z: 0 } as const;

function pathData(random: Random): string {
  const parts = ['M' + figures(random, 2)];
  const count = 1 + below(random, random() < 0.95 ? 8 : 300);
  for (let i = 0; i < count; i += 1) {
    const [letter, numbers] = oneOf(random, Object.entries(PATH_COMMANDS));
    const own = random() < 0.5 ? letter : letter.toLowerCase();
    const arc =
      numbers === 7
        ? `${figures(random, 3)} ${below(random, 2)}${below(random, 2)} ${figures(random, 2)}`
        : figures(random, numbers);
    parts.push(own + arc);
  }
  return parts.join(random() < 0.9 ? '' : ' ');
}

function transform(random: Random): string {
  const one = (): string => {
    const [name, count] = oneOf(random, [
      ['translate', 2],
      ['scale', 1],
      ['scale', 2],
      ['rotate', 1],
      ['rotate', 3],
      ['skewX', 1],
      ['skewY', 1],
      ['matrix', 6],
    ] as const);
    return `${name}(${figures(random, count)})`;
  };
  return Array.from({ length: 1 + below(random, random() < 0.97 ? 2 : 40) }, one).join(' ');
}

function attributes(random: Random): string {
  const made = new Map<string, string>();
  const put = (share: number, name: string, value: () => string): void => {
    if (random() < share) made.set(name, value());
  };
  put(0.3, 'id', () => (random() < 0.8 ? oneOf(random, ['a', 'b', 'c']) : escaped(oneOf(random, HOSTILE_NAMES))));
  put(0.2, 'transform', () => transform(random));
  put(0.2, 'class', () => oneOf(random, ['a', 'b', 'a b', '__proto__']));
  put(0.2, 'fill', () => oneOf(random, ['none', 'red', 'url(#a)', '', 'transparent', 'inherit']));
  put(0.3, 'stroke', () => oneOf(random, ['none', 'black', 'url(#b)', 'inherit']));
  put(0.2, 'stroke-width', () => length(random));
  put(0.1, 'stroke-linejoin', () => oneOf(random, ['round', 'miter', 'bevel', 'constructor']));
  put(0.1, 'stroke-linecap', () => oneOf(random, ['round', 'square', 'butt']));
  put(
    0.1,
    'style',
    () =>
      `fill:${oneOf(random, ['none', 'red'])};display:${oneOf(random, ['none', 'inline', ''])};__proto__:1;d:path('M0 0H9V9z')`,
  );
  put(0.1, 'fill-rule', () => oneOf(random, ['evenodd', 'nonzero', '']));
  put(0.05, 'clip-path', () => 'url(#a)');
  return [...made].map(([name, value]) => ` ${name}="${value}"`).join('');
}

const points = (random: Random): string => figures(random, 2 * (1 + below(random, random() < 0.95 ? 6 : 200)));

function shape(random: Random): string {
  const own = attributes(random);
  const lengths = (...names: readonly string[]): string =>
    names.map((name) => (random() < 0.85 ? ` ${name}="${length(random)}"` : '')).join('');
  switch (below(random, 9)) {
    case 0:
      return `<rect${lengths('x', 'y', 'width', 'height', 'rx', 'ry')}${own}/>`;
    case 1:
      return `<circle${lengths('cx', 'cy', 'r')}${own}/>`;
    case 2:
      return `<ellipse${lengths('cx', 'cy', 'rx', 'ry')}${own}/>`;
    case 3:
      return `<line${lengths('x1', 'y1', 'x2', 'y2')}${own}/>`;
    case 4:
      return `<${oneOf(random, ['polygon', 'polyline'])} points="${points(random)}"${own}/>`;
    case 5:
      return `<use href="#${oneOf(random, ['a', 'b', 'c', 'd', '__proto__'])}"${lengths('x', 'y', 'width', 'height')}${own}/>`;
    case 6:
      return oneOf(random, [
        '<text>a</text>',
        '<image href="a"/>',
        '<title>&lt;b&gt;</title>',
        '<foreignObject/>',
        '<script>1</script>',
        '<x:y/>',
        '<animate/>',
      ]);
    default:
      return `<path d="${pathData(random)}"${own}/>`;
  }
}

function content(random: Random, depth: number): string {
  const count = 1 + below(random, depth > 3 ? 2 : 4);
  return Array.from({ length: count }, () => {
    if (random() > 0.3 || depth > 6) return shape(random);
    const name = oneOf(random, ['g', 'g', 'g', 'svg', 'symbol', 'defs', 'a', 'switch', 'clipPath']);
    const frame = name === 'svg' || name === 'symbol' ? ` viewBox="${figures(random, 4)}"` : '';
    return `<${name}${attributes(random)}${frame}>${content(random, depth + 1)}</${name}>`;
  }).join('');
}

const RULES = [
  '.a{fill:none}',
  '#b{stroke:red;stroke-width:3}',
  '*{fill-rule:evenodd}',
  'path{display:none}',
  '@import url(x);',
  'a>b{x:y}',
  '/*',
  '.a,.b{',
  '}',
  '.__proto__{fill:red}',
];

/** A drawing that is whole as XML in nearly all cases: frames, groups, copies, styles and shapes with wild figures. */
export function wildSvg(random: Random): Uint8Array {
  const kind = random();
  if (kind < 0.003) return nestedSvg(random);
  if (kind < 0.006) return copiedSvg(random);
  const sheet =
    random() < 0.2
      ? `<style>${Array.from({ length: 1 + below(random, 5) }, () => oneOf(random, RULES)).join('')}</style>`
      : '';
  const frame = [
    random() < 0.8 ? ` width="${length(random)}"` : '',
    random() < 0.8 ? ` height="${length(random)}"` : '',
    random() < 0.7 ? ` viewBox="${random() < 0.7 ? '0 0 100 100' : figures(random, 4)}"` : '',
    random() < 0.1 ? ` preserveAspectRatio="${oneOf(random, ['none', 'xMinYMax slice', 'x', 'xMidYMid meet'])}"` : '',
  ].join('');
  return bytesOf(`<svg xmlns="http://www.w3.org/2000/svg"${frame}>${sheet}${content(random, 0)}</svg>`);
}

/** Groups within groups, up to a hundred thousand. */
function nestedSvg(random: Random): Uint8Array {
  const depth = oneOf(random, [250, 257, 1000, 5000, 20_000]);
  const group = oneOf(random, ['<g>', '<g transform="scale(2)">', '<g transform="rotate(1)" id="a">']);
  return bytesOf(`<svg>${group.repeat(depth)}<path d="M0 0H9V9Z"/>${'</g>'.repeat(depth)}</svg>`);
}

/** Copies of copies: a few lines that stand for more shapes than can be counted. */
function copiedSvg(random: Random): Uint8Array {
  const levels = 3 + below(random, 70);
  const times = 1 + below(random, 10);
  const groups = Array.from(
    { length: levels },
    (_, i) => `<g id="l${i + 1}">${`<use href="#l${i}"/>`.repeat(times)}</g>`,
  );
  return bytesOf(`<svg><path id="l0" d="M0 0H9V9Z"/>${groups.join('')}<use href="#l${levels}"/></svg>`);
}
