import ts from 'typescript';

/** What a place of the core says under a code. */
export interface Told {
  readonly code: string;
  /** Every wording that stands there, its holes filled with figures; empty where the text is made elsewhere. */
  readonly texts: readonly string[];
}

/** What stands in a hole. */
const FIGURE = '7';
const CODE = /^[a-z]+(?:-[a-z]+)*\/[a-z\d-]+$/;
/** Functions that give a figure with its unit, by their name. */
const UNITS: readonly (readonly [RegExp, string])[] = [
  [/^(?:formatMm|millimetres|mm|mmText)$/, '7 mm'],
  [/^degrees$/, '7°'],
  [/^percent$/, '7 %'],
];
/** A sentence with more choices than these is not followed through all of them. */
const MOST_WORDINGS = 32;

/** @returns the sentences of a source file that stand beside a code: `fail('code', text)` and `{ code, text }`. */
export function findTold(fileName: string, source: string): Told[] {
  const file = ts.createSourceFile(fileName, source, ts.ScriptTarget.ES2022, true);
  const told: Told[] = [];
  const add = (codes: readonly string[], texts: readonly string[]): void => {
    for (const code of codes) if (CODE.test(code) && !code.endsWith(FIGURE)) told.push({ code, texts });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node)) {
      const at = node.arguments.findIndex((argument) => wordings(argument)?.some((text) => CODE.test(text)));
      if (at >= 0 && at + 1 < node.arguments.length)
        add(
          wordings(node.arguments[at]) ?? [],
          node.arguments
            .slice(at + 1)
            .flatMap((argument) => wordings(argument) ?? [])
            .filter(isSentence),
        );
    }
    if (ts.isObjectLiteralExpression(node)) {
      const [code, text] = ['code', 'text'].map((name) => propertyOf(node, name));
      if (code !== undefined) add(wordings(code) ?? [], (text && wordings(text))?.filter(isSentence) ?? []);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return told;
}

const isSentence = (text: string): boolean => /\p{L}{2}.* /u.test(text);

const propertyOf = (node: ts.ObjectLiteralExpression, name: string): ts.Expression | undefined =>
  node.properties.find(
    (property): property is ts.PropertyAssignment =>
      ts.isPropertyAssignment(property) && property.name.getText() === name,
  )?.initializer;

/** The texts an expression may give; null where it is no text that stands there. */
function wordings(node: ts.Expression): readonly string[] | null {
  if (ts.isStringLiteralLike(node)) return [node.text];
  if (ts.isParenthesizedExpression(node)) return wordings(node.expression);
  if (ts.isConditionalExpression(node)) {
    const [yes, no] = [wordings(node.whenTrue), wordings(node.whenFalse)];
    return yes === null || no === null ? null : [...yes, ...no];
  }
  if (!ts.isTemplateExpression(node)) return null;
  return node.templateSpans.reduce<readonly string[]>(
    (texts, { expression, literal }) =>
      texts
        .flatMap((text) => (wordings(expression) ?? [figureOf(expression)]).map((hole) => text + hole + literal.text))
        .slice(0, MOST_WORDINGS),
    [node.head.text],
  );
}

function figureOf(node: ts.Expression): string {
  const name = ts.isCallExpression(node) ? node.expression.getText() : '';
  return UNITS.find(([names]) => names.test(name))?.[1] ?? FIGURE;
}
