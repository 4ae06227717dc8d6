import { describe, expect, it } from 'vitest';
import { FOAM_RULES, rulesOf } from '../../src/model/foam-settings.ts';
import { DEFAULT_FOAMS } from '../../src/model/foams.ts';
import { History } from '../../src/project/history.ts';
import { newProject } from '../../src/project/new-project.ts';
import {
  forgetRules,
  RULE_LIMITS,
  RULE_NAMES,
  ruled,
  ruleOf,
  setRule,
  usualRule,
  withRule,
} from '../../src/project/shop-rules.ts';

const [FOAM, OTHER] = DEFAULT_FOAMS;
const begun = () => new History(newProject('helm', { hash: '0'.repeat(64), fileName: 'helm.obj', format: 'obj' }));

describe('rules of the shop', () => {
  it('are the usual ones until a foam has its own, and each stays within its limits', () => {
    for (const name of RULE_NAMES) {
      expect(ruleOf(FOAM, name)).toBe(usualRule(name));
      expect(usualRule(name)).toBeGreaterThanOrEqual(RULE_LIMITS[name].least);
      expect(usualRule(name)).toBeLessThanOrEqual(RULE_LIMITS[name].most);
    }
    expect(rulesOf(FOAM)).toBe(FOAM_RULES);
    // Limits of the skins and of stretch: 10 and 25, 3 and 8 per cent (foam model 3).
    expect([usualRule('bendNoticePct'), usualRule('bendTooMuchPct')]).toEqual([10, 25]);
    expect([usualRule('stretchNoticePct'), usualRule('stretchTooMuchPct')]).toEqual([3, 8]);
  });

  it.each(RULE_NAMES)('%s is set for one foam alone, undone, and forgotten', (name) => {
    const history = begun();
    const first = history.project;
    const value = usualRule(name) + 1;
    history.run(setRule(FOAM.id, name, value));
    expect(ruleOf(history.project.foams[0], name)).toBe(value);
    expect(history.project.foams[1]).toBe(OTHER);
    for (const other of RULE_NAMES)
      if (other !== name) expect(ruleOf(history.project.foams[0], other)).toBe(usualRule(other));
    history.undo();
    expect(history.project).toBe(first);
    history.redo();
    history.run(forgetRules(FOAM.id));
    expect(history.project.foams[0]).not.toHaveProperty('rules');
    for (const each of RULE_NAMES) expect(ruleOf(history.project.foams[0], each)).toBe(usualRule(each));
  });

  it('say nothing of what is as usual, and change nothing where nothing is new', () => {
    const steeper = withRule(FOAM, 'bevelLimitDeg', 50);
    expect(steeper.rules).toEqual({ bevelLimitDeg: 50 });
    expect(withRule(steeper, 'bevelLimitDeg', 50)).toBe(steeper);
    expect(withRule(steeper, 'bevelLimitDeg', 45)).toEqual(FOAM);
    const history = begun();
    expect(history.run(setRule(FOAM.id, 'hingeMm', 1.5))).toBe(history.project);
    expect(history.undo()).toBe(history.project);
  });

  it('keep a notice no higher than what is too much', () => {
    expect(withRule(FOAM, 'stretchNoticePct', 12).stretchLimits).toEqual({ noticePct: 12, tooMuchPct: 12 });
    expect(withRule(FOAM, 'bendTooMuchPct', 6).bendLimits).toEqual({ noticePct: 6, tooMuchPct: 6 });
    expect(ruled(FOAM, { bendNoticePct: 30, bendTooMuchPct: 40 }).bendLimits).toEqual({
      noticePct: 30,
      tooMuchPct: 40,
    });
  });

  it('are the same object for rules that are alike', () => {
    const [a, b] = [{ hingeMm: 2 }, { hingeMm: 2 }].map((rules) => rulesOf({ rules }));
    expect(a).toBe(b);
    expect(a).toEqual({ ...FOAM_RULES, hingeMm: 2 });
    expect(rulesOf({ rules: { hingeMm: FOAM_RULES.hingeMm } })).toBe(FOAM_RULES);
  });

  it('refuse what is beyond their limits: that is the caller’s mistake', () => {
    expect(() => setRule(FOAM.id, 'bevelLimitDeg', 71)).toThrow(RangeError);
    expect(() => setRule(FOAM.id, 'hingeMm', Number.NaN)).toThrow(RangeError);
  });
});
