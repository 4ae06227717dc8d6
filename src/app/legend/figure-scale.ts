import type { Project } from '../../project/project.ts';
import { ruleOf, usualRule, type RuleName } from '../../project/shop-rules.ts';
import { FIT_LIMIT_MM } from '../../viewport/bench-contract.ts';
import { pullAtStrain } from '../../viewport/pull-limit.ts';
import type { Bench } from '../bench-state.ts';
import { foamOnBench } from '../sheet-on-bench.ts';
import type { FigureKind } from './figures.ts';

/** A scale of a figure, in per cent, mm or N/cm as the figure is. */
export interface FigureScale {
  /** At the ends: from here on it is too much. */
  readonly limit: number;
  /** From here on it is told of. */
  readonly notice: number;
  /** True where there is nothing under 0. */
  readonly isOneSided: boolean;
}

/** 1 N/mm is so many N/cm. */
export const N_PER_CM = 10;

/** The scale of a figure for the foam that lies on the bench: the same for colours, legend and table. @param sheet of the wall, 1 the outermost. */
export function figureScale(kind: FigureKind, project: Project | null, bench: Bench, sheet: number): FigureScale {
  const foam = foamOnBench(project, sheet);
  const rule = (name: RuleName): number => (foam === undefined ? usualRule(name) : ruleOf(foam, name));
  switch (kind) {
    case 'stretch':
      return { limit: rule('stretchTooMuchPct'), notice: rule('stretchNoticePct'), isOneSided: false };
    case 'bend':
      return { limit: rule('bendTooMuchPct'), notice: rule('bendNoticePct'), isOneSided: false };
    case 'room': {
      const { limitMm, wantedMm } = bench.room ?? { limitMm: 10, wantedMm: 0 };
      return { limit: limitMm, notice: wantedMm > 0 ? wantedMm : limitMm / 2, isOneSided: false };
    }
    case 'pull': {
      const thicknessMm = bench.shell?.thicknessMm ?? foam?.thicknessMm ?? 5;
      const pull = (name: RuleName): number => N_PER_CM * pullAtStrain(rule(name), thicknessMm);
      return { limit: pull('bendTooMuchPct'), notice: pull('bendNoticePct'), isOneSided: true };
    }
    case 'fit':
      return { limit: FIT_LIMIT_MM, notice: FIT_LIMIT_MM / 2, isOneSided: false };
  }
}
