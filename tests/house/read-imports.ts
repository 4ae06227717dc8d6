import ts from 'typescript';

/** One way a file reaches another, or a package. */
export interface Import {
  /** As written. */
  readonly specifier: string;
  /** `worker` is the address of a file in `new URL(…, import.meta.url)`. */
  readonly kind: 'import' | 're-export' | 'dynamic' | 'worker';
  /** Only types are taken: nothing of it is left when the program runs. */
  readonly isTypeOnly: boolean;
  /** Names taken, in the other file's words; `*` for all of them. */
  readonly names: readonly string[];
  readonly line: number;
}

/** What one source file takes from elsewhere and which forbidden globals it uses. */
export interface SourceFacts {
  readonly imports: readonly Import[];
  /** Uses of the clock, of unseeded chance and of the console, as written, with their lines. */
  readonly impure: readonly { readonly what: string; readonly line: number }[];
  /** The file does nothing but pass on what other files export. */
  readonly isBarrel: boolean;
}

/** Reads a TypeScript file by its syntax tree, so that comments and strings are not mistaken for imports. */
export function readSource(fileName: string, text: string): SourceFacts {
  const file = ts.createSourceFile(fileName, text, ts.ScriptTarget.ES2022, true);
  const imports: Import[] = [];
  const impure: { what: string; line: number }[] = [];
  const lineOf = (node: ts.Node): number => file.getLineAndCharacterOfPosition(node.getStart(file)).line + 1;
  const add = (
    node: ts.Node,
    specifier: ts.Node | undefined,
    kind: Import['kind'],
    isTypeOnly: boolean,
    names: string[],
  ) => {
    // A computed address cannot be checked, so it is given as it stands, and no table knows it.
    const written = specifier && ts.isStringLiteralLike(specifier) ? specifier.text : (specifier?.getText(file) ?? '');
    imports.push({ specifier: written, kind, isTypeOnly, names, line: lineOf(node) });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) {
      add(node, node.moduleSpecifier, 'import', isTypeImport(node.importClause), importedNames(node.importClause));
    } else if (ts.isExportDeclaration(node) && node.moduleSpecifier) {
      add(node, node.moduleSpecifier, 're-export', isTypeExport(node), exportedNames(node));
    } else if (ts.isImportTypeNode(node)) {
      const literal = ts.isLiteralTypeNode(node.argument) ? node.argument.literal : node.argument;
      add(node, literal, 'import', true, node.qualifier ? [node.qualifier.getText(file)] : ['*']);
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      add(node, node.arguments[0], 'dynamic', false, ['*']);
    } else if (ts.isNewExpression(node) && node.expression.getText(file) === 'URL' && node.arguments?.length === 2) {
      if (node.arguments[1].getText(file) === 'import.meta.url') add(node, node.arguments[0], 'worker', false, ['*']);
    }
    const what = impureUse(node, file);
    if (what !== undefined) impure.push({ what, line: lineOf(node) });
    ts.forEachChild(node, visit);
  };
  visit(file);
  const isBarrel =
    file.statements.length > 0 &&
    file.statements.every((statement) => ts.isExportDeclaration(statement) && statement.moduleSpecifier);
  return { imports, impure, isBarrel };
}

function isTypeImport(clause: ts.ImportClause | undefined): boolean {
  if (!clause) return false; // for its effect alone
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const bindings = clause.namedBindings;
  if (clause.name || !bindings || !ts.isNamedImports(bindings)) return false;
  return bindings.elements.length > 0 && bindings.elements.every((element) => element.isTypeOnly);
}

function isTypeExport(node: ts.ExportDeclaration): boolean {
  if (node.isTypeOnly) return true;
  const clause = node.exportClause;
  if (!clause || !ts.isNamedExports(clause)) return false;
  return clause.elements.length > 0 && clause.elements.every((element) => element.isTypeOnly);
}

function importedNames(clause: ts.ImportClause | undefined): string[] {
  if (!clause) return [];
  const names = clause.name ? ['default'] : [];
  const bindings = clause.namedBindings;
  if (!bindings) return names;
  if (ts.isNamespaceImport(bindings)) return [...names, '*'];
  return [...names, ...bindings.elements.map((element) => (element.propertyName ?? element.name).text)];
}

function exportedNames(node: ts.ExportDeclaration): string[] {
  const clause = node.exportClause;
  if (!clause || !ts.isNamedExports(clause)) return ['*'];
  return clause.elements.map((element) => (element.propertyName ?? element.name).text);
}

/** `console.…`, `Date.now`, `Math.random`, and `new Date()` or `Date()` without a given time. */
function impureUse(node: ts.Node, file: ts.SourceFile): string | undefined {
  if (ts.isPropertyAccessExpression(node)) {
    const text = node.getText(file).replace(/^(globalThis|self|window)\./, '');
    if (text === 'Date.now' || text === 'Math.random' || /^console\.\w+$/.test(text)) return text;
  }
  if (ts.isNewExpression(node) && node.expression.getText(file) === 'Date' && !node.arguments?.length)
    return 'new Date()';
  if (ts.isCallExpression(node) && node.expression.getText(file) === 'Date') return 'Date()';
  return undefined;
}
