import ts from 'typescript';

/** A text that stands where no language reaches it, or words that are read before a language is chosen. */
export interface WordFault {
  readonly line: number;
  readonly what: string;
}

/** Attributes that are read out or shown. */
const SPOKEN_ATTRIBUTES =
  /\s(?:aria-label|aria-description|aria-roledescription|title|placeholder|alt|label)="([^"]*)"/g;
const LETTERS = /\p{L}{2,}/u;
/** Names of symbols and kinds of file, the same in every language. */
const NO_WORDS = /\b(?:mm|cm|px|dpi|Esc|PDF|SVG|DXF|STL|OBJ|PNG|JSON|CSV)\b/g;

/** @returns what an element's file says by itself, in its templates, and what it reads of the words when it is loaded. */
export function findWordFaults(fileName: string, text: string): WordFault[] {
  const file = ts.createSourceFile(fileName, text, ts.ScriptTarget.ES2022, true);
  const faults: WordFault[] = [];
  const add = (node: ts.Node, what: string): number =>
    faults.push({ line: file.getLineAndCharacterOfPosition(node.getStart(file)).line + 1, what });

  const visit = (node: ts.Node, isLoading: boolean): void => {
    if (ts.isImportDeclaration(node) || ts.isTypeNode(node)) return;
    if (ts.isTaggedTemplateExpression(node) && /^(html|svg)$/.test(node.tag.getText(file)))
      for (const said of textsOf(node.template)) add(node, `says “${said}”`);
    if (isLoading && ts.isIdentifier(node) && /WORDS$/.test(node.text))
      add(node, `reads ${node.text} when it is loaded`);
    const isLater = ts.isFunctionLike(node) || ts.isClassStaticBlockDeclaration(node);
    ts.forEachChild(node, (child) => visit(child, isLoading && !isLater));
  };
  visit(file, true);
  return faults;
}

/** Letters that a template shows or speaks by itself, outside of what is put into it. */
function textsOf(template: ts.TemplateLiteral): string[] {
  const parts = ts.isNoSubstitutionTemplateLiteral(template)
    ? [template.text]
    : [template.head.text, ...template.templateSpans.map(({ literal }) => literal.text)];
  // What is put in stands between parts: a mark that is no letter keeps attributes and tags whole.
  const whole = parts.join('\u0000').replace(/<!--.*?-->/gs, '');
  const spoken = [...whole.matchAll(SPOKEN_ATTRIBUTES)].map(([, said]) => said);
  const shown = whole
    .replace(/<(style|title)\b.*?<\/\1>/gs, '')
    .replace(/<[^>]*>/gs, ' ')
    .split('\u0000');
  return [...shown, ...spoken.flatMap((said) => said.split('\u0000'))]
    .map((said) => said.trim())
    .filter((said) => LETTERS.test(said.replace(NO_WORDS, '')));
}
