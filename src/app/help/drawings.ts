import { css, html, nothing, svg, type SVGTemplateResult } from 'lit';

/** How drawings of the help are lined: as the paper is. What is meant is drawn in the colour of what is chosen. */
export const HELP_DRAWING_STYLE = css`
  svg.help {
    display: block;
    flex: none;
    inline-size: 132px;
    block-size: 64px;
    fill: none;
    stroke: var(--ink);
    stroke-linejoin: round;
    stroke-linecap: butt;
  }
  svg.help .foam {
    fill: var(--paper-low);
    stroke-width: 2px;
  }
  svg.help .cut {
    stroke-width: 2px;
  }
  svg.help .thin {
    stroke-width: 1px;
  }
  svg.help .fold {
    stroke-width: 1px;
    stroke-dasharray: 10 3 2 3;
  }
  svg.help .before {
    stroke-width: 1px;
    stroke-dasharray: 3 3;
  }
  svg.help .meant {
    stroke: var(--lamp-ink);
    stroke-width: 3px;
  }
  svg.help .room {
    fill: var(--lamp);
    fill-opacity: 0.55;
    stroke: none;
  }
`;

/** A measure from one place to another on a level: a thin line with an arrow at both ends. */
const level = (x1: number, x2: number, y: number) => svg`<path class="meant" d="M${x1} ${y}H${x2}"/>
  <path class="thin" d="M${x1} ${y - 5}v10M${x2} ${y - 5}v10"/>`;
/** The same upright. */
const upright = (x: number, y1: number, y2: number) => svg`<path class="meant" d="M${x} ${y1}V${y2}"/>
  <path class="thin" d="M${x - 5} ${y1}h10M${x - 5} ${y2}h10"/>`;
const arrow = (d: string) => svg`<path class="meant" d=${d}/>`;

/** Each on a ground of 132 by 64. */
const DRAWINGS = {
  neutral: svg`<path class="foam" d="M14 60A52 52 0 0 1 118 60H94A28 28 0 0 0 38 60Z"/><path class="meant" d="M26 60A40 40 0 0 1 106 60"/>`,
  surface: svg`<path class="foam" d="M10 20H122V44H10Z"/><path class="before" d="M10 32H122"/><path class="meant" d="M4 20H128"/><path class="thin" d="M4 44H128"/>`,
  thickness: svg`<path class="foam" d="M34 20H122V44H34Z"/>${upright(18, 20, 44)}`,
  bevel: svg`<path class="foam" d="M8 14H86L68 32H8Z"/><path class="foam" d="M86 14V60H68V32Z"/><path class="meant" d="M86 14 68 32"/>`,
  butt: svg`<path class="foam" d="M8 22H66V42H8ZM66 22H124V42H66Z"/><path class="meant" d="M66 18V46"/>`,
  lap: svg`<path class="foam" d="M8 18H84V32H8Z"/><path class="foam" d="M52 32H124V46H52Z"/>${level(52, 84, 55)}`,
  kerf: svg`<path class="foam" d="M8 16H124V44H112V22h-4V44H92V22h-4V44H70V22h-8V44H46V22h-4V44H26V22h-4V44H8Z"/>${level(62, 70, 55)}`,
  groove: svg`<path class="foam" d="M8 16H124V46H86L66 24 46 46H8Z"/><path class="meant" d="M66 16V24"/><path class="fold" d="M66 4V60"/>`,
  stagger: svg`<path class="foam" d="M8 12H44V30H8ZM44 12H124V30H44ZM8 30H84V48H8ZM84 30H124V48H84Z"/>${level(44, 84, 57)}`,
  girth: svg`<path class="foam" d="M24 32C24 8 56 14 66 20 76 14 108 8 108 32 108 58 24 58 24 32Z"/><path class="meant" d="M22 32C22 12 36 11 44 11H88C96 11 110 12 110 32 110 60 22 60 22 32Z"/>`,
  ease: svg`<path class="room" fill-rule="evenodd" d="M18 32a48 28 0 1 0 96 0a48 28 0 1 0-96 0ZM32 32a34 18 0 1 0 68 0a34 18 0 1 0-68 0Z"/><ellipse class="cut" cx="66" cy="32" rx="48" ry="28"/><ellipse class="thin" cx="66" cy="32" rx="34" ry="18"/>`,
  clearance: svg`<path class="room" fill-rule="evenodd" d="M46 32a20 20 0 1 0 40 0a20 20 0 1 0-40 0ZM51 32a15 15 0 1 0 30 0a15 15 0 1 0-30 0Z"/><circle class="cut" cx="66" cy="32" r="29"/><circle class="cut" cx="66" cy="32" r="20"/><circle class="thin" cx="66" cy="32" r="15"/>`,
  overlap: svg`<path class="room" d="M60 8H76V56H60Z"/><path class="cut" d="M20 8H76V56H20Z"/><path class="thin" d="M60 8H116V56H60Z"/>`,
  margin: svg`<path class="room" fill-rule="evenodd" d="M44 4H88V60H44ZM51 11V53H81V11Z"/><path class="cut" d="M44 4H88V60H44Z"/><path class="thin" d="M51 11H81V53H51Z"/>`,
  shrinkage: svg`<path class="before" d="M38 4H94V60H38Z"/><path class="foam" d="M42 7H90V57H42Z"/>${arrow('M104 32H92M97 28 92 32 97 36M28 32H40M35 28 40 32 35 36')}`,
  stretch: svg`<path class="before" d="M46 16H86V48H46Z"/><path class="foam" d="M36 20H96V44H36Z"/>${arrow('M98 32H122M116 27 122 32 116 37M34 32H10M16 27 10 32 16 37')}`,
  squash: svg`<path class="before" d="M30 16H102V48H30Z"/><path class="foam" d="M42 14Q48 20 54 14T66 14 78 14 90 14V50H42Z"/>${arrow('M122 32H94M100 27 94 32 100 37M10 32H38M32 27 38 32 32 37')}`,
  fold: svg`<path class="cut" d="M10 48 66 22 122 48"/><path class="before" d="M66 22 118 0"/><path class="meant" d="M98 8A36 36 0 0 1 100 37"/>`,
  winding: svg`<path class="cut" d="M8 16H124M8 48H124"/><path class="foam" d="M22 16H50L40 48H12ZM50 16H78L68 48H40ZM78 16H106L96 48H68Z"/>${level(40, 68, 57)}`,
  dart: svg`<path class="foam" d="M14 8H118V58H82L66 18 50 58H14Z"/><path class="meant" d="M82 58 66 18 50 58"/>`,
  grain: svg`<path class="foam" d="M12 6H120V58H12Z"/><path class="cut" d="M34 44 44 18H88L98 44Z"/>${arrow('M22 52V14M17 20 22 13 27 20')}`,
  square: svg`<path class="meant" d="M44 4H88V48H44Z"/><path class="thin" d="M30 52H102V62H30ZM44 52v5M55 52v3M66 52v4M77 52v3M88 52v5"/>`,
  mate: svg`<path class="cut" d="M8 26Q66 14 124 26M8 40Q66 28 124 40"/><path class="meant" d="M40 16V8M92 16V8M40 40V48M92 40V48"/>`,
  lines: svg`<path class="cut" d="M10 14H122"/><path class="thin" d="M10 32H122"/><path class="fold" d="M10 50H122"/>`,
  stack: svg`<path class="foam" d="M20 48H112V60H20ZM30 36H102V48H30ZM44 24H88V36H44ZM56 12H76V24H56Z"/><path class="meant" d="M16 60C34 40 50 10 66 8 82 10 98 40 116 60"/>`,
  seam: svg`<path class="foam" d="M8 10H60Q68 32 60 54H8Z"/><path class="foam" d="M124 10H72Q80 32 72 54H124Z"/><path class="meant" d="M60 10Q68 32 60 54M72 10Q80 32 72 54"/>`,
  offcut: svg`<path class="before" d="M18 6H114V58H18Z"/><path class="room" d="M18 40H70V6H114V58H18Z"/><path class="cut" d="M18 40H70V6H114V58H18Z"/>`,
  twin: svg`<path class="fold" d="M66 2V62"/><path class="foam" d="M58 12V52H20L10 32Z"/><path class="foam" d="M74 12V52H112L122 32Z"/>`,
  spacing: svg`<path class="foam" d="M8 10H58V54H8ZM72 10H124V54H72Z"/><path class="room" d="M58 10H72V54H58Z"/>`,
  off: svg`<path class="before" d="M14 58A52 46 0 0 1 118 58"/><path class="cut" d="M6 58A60 52 0 0 1 126 58"/>${arrow('M66 12V4M61 9 66 3 71 9')}`,
} as const satisfies Readonly<Record<string, SVGTemplateResult>>;

export type DrawingName = keyof typeof DRAWINGS;

/** Which drawing shows what a field or a word means, where one helps. */
const DRAWN: Readonly<Record<string, DrawingName>> = {
  neutral: 'neutral',
  'neutral-arc': 'neutral',
  'neutral-across': 'neutral',
  bend: 'neutral',
  strain: 'neutral',
  surface: 'surface',
  face: 'surface',
  back: 'surface',
  layer: 'stagger',
  thickness: 'thickness',
  foam: 'thickness',
  bevel: 'bevel',
  'rule-bevelLimitDeg': 'bevel',
  'profile-lean': 'bevel',
  butt: 'butt',
  lap: 'lap',
  allowance: 'lap',
  kerf: 'kerf',
  'rule-kerfMm': 'kerf',
  'cut-width': 'kerf',
  groove: 'groove',
  hinge: 'groove',
  'rule-hingeMm': 'groove',
  'rule-leastHingeMm': 'groove',
  'score-depthMm': 'groove',
  stagger: 'stagger',
  girth: 'girth',
  'tape-bodyGirthMm': 'girth',
  'pass-girthMm': 'girth',
  'strap-girth': 'girth',
  ease: 'ease',
  'tape-easeMm': 'ease',
  clearance: 'clearance',
  room: 'clearance',
  'join-room': 'clearance',
  core: 'clearance',
  'core-diameterMm': 'clearance',
  overlap: 'overlap',
  'page-overlapMm': 'overlap',
  margin: 'margin',
  'page-marginMm': 'margin',
  'fill-borderMm': 'margin',
  'fill-spacingMm': 'spacing',
  shrinkage: 'shrinkage',
  'shrink-alongPct': 'shrinkage',
  'shrink-acrossPct': 'shrinkage',
  'allow-shrinkage': 'shrinkage',
  stretch: 'stretch',
  'rule-stretchNoticePct': 'stretch',
  'rule-stretchTooMuchPct': 'stretch',
  'proposal-limit': 'stretch',
  squash: 'squash',
  'squash-price': 'squash',
  fold: 'fold',
  'rule-foldLimitDeg': 'fold',
  sharper: 'fold',
  ridge: 'fold',
  pitch: 'winding',
  'winding-pitch': 'winding',
  'winding-overlap': 'winding',
  dart: 'dart',
  'dart-end': 'dart',
  grain: 'grain',
  'grain-angle': 'grain',
  'fill-turns': 'grain',
  'scale-square': 'square',
  'printer-acrossMm': 'square',
  'printer-upMm': 'square',
  'mate-mark': 'mate',
  'rule-markSpacingMm': 'mate',
  'cut-line': 'lines',
  'other-edge': 'lines',
  stack: 'stack',
  'build-up-rule': 'stack',
  seam: 'seam',
  offcut: 'offcut',
  twin: 'twin',
  'twins-paper': 'twin',
  off: 'off',
};

/** The drawing of a field or of a word of the trade; nothing where none helps. It says no more than the words beside it. */
export function helpDrawing(of: string) {
  return !isDrawn(of)
    ? nothing
    : html`<svg class="help" viewBox="0 0 132 64" aria-hidden="true">${DRAWINGS[DRAWN[of]]}</svg>`;
}

export const isDrawn = (of: string): boolean => Object.hasOwn(DRAWN, of);

/** What is drawn, for checks. */
export const DRAWN_NAMES: readonly string[] = Object.keys(DRAWN);
