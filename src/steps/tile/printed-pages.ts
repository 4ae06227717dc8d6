import { ok, type Result } from '../../base/result.ts';
import type { Finding } from '../../base/finding.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import type { Page, PageSet } from '../../model/page.ts';
import type { PrinterProfile } from '../../model/printer.ts';
import { correctedFrame, correctPage } from './correct-pages.ts';
import { pageSteps } from './make-pages.ts';
import type { PageInput } from './page-input.ts';
import { USUAL_WHITE_EDGE_MM } from './paper-frame.ts';
import { stripPages, type StripInput } from './strip-pages.ts';

/**
 * All pages as they are sent to the printer: those of `pageSteps`, drawn so that they measure true on paper where `printer` says how it errs.
 * Blocks stay in true mm.
 */
export function* printedPageSteps(input: PageInput): Stepwise<Result<PageSet>> {
  const { printer, paper, marginMm } = input;
  if (printer === undefined) return yield* pageSteps(input);
  const isTurned = input.orientation === 'landscape' && !paper.roll;
  const page = isTurned ? { ...paper, widthMm: paper.heightMm, heightMm: paper.widthMm } : paper;
  const frame = correctedFrame(printer, page, marginMm, USUAL_WHITE_EDGE_MM);
  const fitted = paper.roll ? { ...paper, heightMm: frame.longestMm } : paper;
  const set = yield* pageSteps({ ...input, paper: fitted, marginMm: frame.marginMm });
  if (!set.ok) return set;
  const pages = set.value.pages.map((drawn) => correctPage(drawn, printer, paper.roll));
  return ok({ ...set.value, pages }, [...set.notes, ...widerMargin(printer.name, marginMm, frame.marginMm)]);
}

/** The pages of the test strip, likewise. */
export function printedStripPages(input: StripInput, printer: PrinterProfile | null): Result<readonly Page[]> {
  if (printer === null) return stripPages(input);
  const { paper, marginMm } = input;
  const ways = [paper, { ...paper, widthMm: paper.heightMm, heightMm: paper.widthMm }].slice(0, paper.roll ? 1 : 2);
  const frames = ways.map((page) => correctedFrame(printer, page, marginMm, USUAL_WHITE_EDGE_MM));
  const fitted = paper.roll ? { ...paper, heightMm: frames[0].longestMm } : paper;
  const margin = Math.max(...frames.map((frame) => frame.marginMm));
  const pages = stripPages({ ...input, paper: fitted, marginMm: margin });
  if (!pages.ok) return pages;
  return ok(
    pages.value.map((page) => correctPage(page, printer, paper.roll)),
    [...pages.notes, ...widerMargin(printer.name, marginMm, margin)],
  );
}

function widerMargin(name: string, wishedMm: number, marginMm: number): readonly Finding[] {
  if (marginMm <= wishedMm) return [];
  return [
    {
      code: 'tile/wider-margin',
      severity: 'note',
      text: `Pages for ${name} have a margin of ${marginMm} mm instead of ${wishedMm}: they are drawn larger than they print, and nothing may leave the paper.`,
      value: marginMm,
      limit: wishedMm,
      unit: 'mm',
      where: {},
    },
  ];
}
