import { fail, ok, type Result } from './result.ts';

/** Lists and objects within one another: no file of ours comes to a tenth of it, and the language's own calls end at some thousands. */
const MOST_DEPTH = 200;

/**
 * Reads a JSON text that came from outside.
 * @param fileName  for the sentence.
 * @param broken    what is told where it is no JSON.
 * @returns fails as `broken` says, or with `json/too-deep`.
 */
export function readJson(text: string, fileName: string, broken: () => Result<never>): Result<unknown> {
  if (depthOf(text) > MOST_DEPTH)
    return fail(
      'json/too-deep',
      `${fileName} holds lists within lists more than ${MOST_DEPTH} deep, as no file for this does: choose another one.`,
    );
  try {
    return ok(JSON.parse(text));
  } catch {
    return broken();
  }
}

/** How deep lists and objects are nested, signs within texts left out. Of what is no JSON any number. */
function depthOf(text: string): number {
  let [depth, deepest, isInText] = [0, 0, false];
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    if (code === QUOTE) isInText = !isInText;
    else if (code === BACKSLASH && isInText) i += 1;
    else if (isInText) continue;
    else if (code === LIST || code === OBJECT) deepest = Math.max(deepest, ++depth);
    else if (code === LIST + 2 || code === OBJECT + 2) depth -= 1;
  }
  return deepest;
}

const QUOTE = 34;
const BACKSLASH = 92;
const LIST = 91;
const OBJECT = 123;
