import type { FoamId } from '../base/ids.ts';
import { BEND_LIMITS } from '../model/bend-check.ts';
import { FOAM_RULES, type FoamRules } from '../model/foam-settings.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import { DEFAULT_FOAMS } from '../model/foams.ts';
import type { Command } from './commands.ts';

/** A rule of the shop that the maker may set for a foam, by the name it has in files and on the command line; each tells its unit. */
export type RuleName = 'stretchNoticePct' | 'stretchTooMuchPct' | 'bendNoticePct' | 'bendTooMuchPct' | keyof FoamRules;

/** Least and most a rule may be, in the unit its name tells: the same for the project's file, the window and the command line. */
export const RULE_LIMITS: Readonly<Record<RuleName, { readonly least: number; readonly most: number }>> = {
  stretchNoticePct: { least: 0.1, most: 100 },
  stretchTooMuchPct: { least: 0.1, most: 100 },
  bendNoticePct: { least: 0.1, most: 100 },
  bendTooMuchPct: { least: 0.1, most: 100 },
  foldLimitDeg: { least: 1, most: 90 },
  panelFlatDeg: { least: 0, most: 45 },
  bevelLimitDeg: { least: 1, most: 70 },
  hingeMm: { least: 0.2, most: 20 },
  leastHingeMm: { least: 0, most: 20 },
  kerfMm: { least: 0.2, most: 20 },
  narrowThicknesses: { least: 0, most: 20 },
  markSpacingMm: { least: 10, most: 1000 },
  markLeastSeamMm: { least: 1, most: 1000 },
};

export const RULE_NAMES = Object.keys(RULE_LIMITS) as readonly RuleName[];

/** Those that stand in `FoamSheet.rules`. */
export const FOAM_RULE_NAMES = Object.keys(FOAM_RULES) as readonly (keyof FoamRules)[];

export const isRuleName = (word: string): word is RuleName => Object.hasOwn(RULE_LIMITS, word);

/** What holds where a foam says nothing. */
export function usualRule(name: RuleName): number {
  const [{ stretchLimits }] = DEFAULT_FOAMS;
  switch (name) {
    case 'stretchNoticePct':
      return stretchLimits.noticePct;
    case 'stretchTooMuchPct':
      return stretchLimits.tooMuchPct;
    case 'bendNoticePct':
      return BEND_LIMITS.noticePct;
    case 'bendTooMuchPct':
      return BEND_LIMITS.tooMuchPct;
    default:
      return FOAM_RULES[name];
  }
}

/** A rule as it holds for a foam. */
export function ruleOf({ stretchLimits, bendLimits = BEND_LIMITS, rules = {} }: FoamSheet, name: RuleName): number {
  switch (name) {
    case 'stretchNoticePct':
      return stretchLimits.noticePct;
    case 'stretchTooMuchPct':
      return stretchLimits.tooMuchPct;
    case 'bendNoticePct':
      return bendLimits.noticePct;
    case 'bendTooMuchPct':
      return bendLimits.tooMuchPct;
    default:
      return rules[name] ?? FOAM_RULES[name];
  }
}

/**
 * A foam with one rule set. Of two limits the lower one never passes the higher: the other one goes along. What is as usual is left out where it
 * may be. The foam itself where nothing changes.
 */
export function withRule(foam: FoamSheet, name: RuleName, value: number): FoamSheet {
  if (ruleOf(foam, name) === value) return foam;
  const { rules = {}, bendLimits = BEND_LIMITS, stretchLimits, ...rest } = foam;
  const own = { ...rest, stretchLimits, ...(foam.bendLimits === undefined ? {} : { bendLimits }) };
  switch (name) {
    case 'stretchNoticePct':
      return { ...foam, stretchLimits: { noticePct: value, tooMuchPct: Math.max(value, stretchLimits.tooMuchPct) } };
    case 'stretchTooMuchPct':
      return { ...foam, stretchLimits: { noticePct: Math.min(value, stretchLimits.noticePct), tooMuchPct: value } };
    case 'bendNoticePct':
      return { ...foam, bendLimits: { noticePct: value, tooMuchPct: Math.max(value, bendLimits.tooMuchPct) } };
    case 'bendTooMuchPct':
      return { ...foam, bendLimits: { noticePct: Math.min(value, bendLimits.noticePct), tooMuchPct: value } };
    default: {
      const { [name]: _, ...others } = rules;
      const changed = value === FOAM_RULES[name] ? others : { ...others, [name]: value };
      return Object.keys(changed).length === 0 ? own : { ...own, rules: changed };
    }
  }
}

/** A foam with several rules set, one after the other in the order of {@link RULE_NAMES}. */
export const ruled = (foam: FoamSheet, rules: Partial<Record<RuleName, number>>): FoamSheet =>
  RULE_NAMES.reduce((own, name) => withRule(own, name, rules[name] ?? ruleOf(own, name)), foam);

/** Sets a rule of the shop for one foam. A value outside {@link RULE_LIMITS} is the caller's mistake and throws. */
export function setRule(foam: FoamId, name: RuleName, value: number): Command {
  const { least, most } = RULE_LIMITS[name];
  if (!(value >= least && value <= most)) throw new RangeError(`rule ${name} ${value}`);
  return {
    label: 'set a shop rule',
    mergeKey: `rule ${foam} ${name}`,
    apply(project) {
      const foams = project.foams.map((sheet) => (sheet.id === foam ? withRule(sheet, name, value) : sheet));
      return foams.every((sheet, i) => sheet === project.foams[i]) ? project : { ...project, foams };
    },
  };
}

/** Gives a foam the usual rules again. */
export const forgetRules = (foam: FoamId): Command => ({
  label: 'take the usual shop rules',
  apply(project) {
    const foams = project.foams.map((sheet) =>
      sheet.id === foam ? ruled(sheet, Object.fromEntries(RULE_NAMES.map((name) => [name, usualRule(name)]))) : sheet,
    );
    return foams.every((sheet, i) => sheet === project.foams[i]) ? project : { ...project, foams };
  },
});
