import type { Tables } from '../language/spoken.ts';
import { AT_BENCH, AT_SHOP } from './at-bench.ts';
import { DATA } from '../../base/german/data.ts';
import { DONE } from './done.ts';
import { CUTTER, FILES } from './files.ts';
import { FORMING } from './forming.ts';
import { GLUING } from './gluing.ts';
import { GUIDE, HELP, KEYS } from './help.ts';
import { HISTORY } from './history.ts';
import { JOIN } from './join.ts';
import { KEEP, OFFLINE } from './keep.ts';
import { LABEL } from './label.ts';
import { LAYOUT } from './layout.ts';
import { LEGEND } from './legend.ts';
import { LOOK } from './look.ts';
import { MARK } from './mark.ts';
import { SCULPT } from './means-sculpt.ts';
import { SHEET } from './means-sheet.ts';
import { SHOP } from './means-shop.ts';
import { PAINT } from './paint.ts';
import { PART } from './part.ts';
import { PLACING } from './placing.ts';
import { PROPOSE } from './propose.ts';
import { QUANTITY } from './quantity.ts';
import { SAW } from './saw.ts';
import {
  BUILD_UP,
  MOCK_UP,
  NEUTRAL,
  OFFCUT,
  PART_JOIN,
  PRINTER,
  RULE,
  RULED,
  SCORE,
  SIMPLIFY,
  SPRING,
  TWIN,
} from './small-tables.ts';
import { STOCK } from './stock.ts';
import { STRIP } from './strip.ts';
import { TERMS } from './terms.ts';
import { TOLD } from './told.ts';
import { VERDICT } from './verdict.ts';
import { WEAR } from './wear.ts';
import { WINDOW } from './window.ts';

/** Every table of the window in German, by its name. */
export const GERMAN: Tables = {
  window: WINDOW,
  atBench: AT_BENCH,
  atShop: AT_SHOP,
  'build-up': BUILD_UP,
  cutter: CUTTER,
  data: DATA,
  done: DONE,
  files: FILES,
  forming: FORMING,
  glossary: TERMS,
  gluing: GLUING,
  guide: GUIDE,
  help: HELP,
  history: HISTORY,
  join: JOIN,
  keep: KEEP,
  keys: KEYS,
  label: LABEL,
  layout: LAYOUT,
  legend: LEGEND,
  look: LOOK,
  mark: MARK,
  means: { ...SCULPT, ...SHEET, ...SHOP },
  'mock-up': MOCK_UP,
  neutral: NEUTRAL,
  offcut: OFFCUT,
  offline: OFFLINE,
  paint: PAINT,
  paperLanguage: { paper: 'Wörter auf dem Papier' },
  part: PART,
  'part-join': PART_JOIN,
  placing: PLACING,
  printer: PRINTER,
  propose: PROPOSE,
  quantity: QUANTITY,
  rule: RULE,
  ruled: RULED,
  saw: SAW,
  score: SCORE,
  simplify: SIMPLIFY,
  spring: SPRING,
  stock: STOCK,
  strip: STRIP,
  told: TOLD,
  twin: TWIN,
  verdict: VERDICT,
  wear: WEAR,
};
