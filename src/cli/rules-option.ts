import { isRuleName, RULE_LIMITS, RULE_NAMES, type RuleName } from '../project/shop-rules.ts';
import { WrongUsage } from './exit.ts';
import { number } from './option-values.ts';

/** `--rule NAME=N`, as often as wanted; of two for one rule the later counts. @throws WrongUsage */
export function rulesFrom(words: readonly string[] | undefined): Partial<Record<RuleName, number>> | undefined {
  if (words === undefined) return undefined;
  const rules: Partial<Record<RuleName, number>> = {};
  for (const word of words) {
    const [name, value, ...rest] = word.split('=');
    if (value === undefined || rest.length > 0) throw new WrongUsage('--rule looks like bevelLimitDeg=40.');
    if (!isRuleName(name)) throw new WrongUsage(`there is no rule ${name}: rules are ${RULE_NAMES.join(', ')}.`);
    rules[name] = number(`rule ${name}`, value, RULE_LIMITS[name]);
  }
  return rules;
}
