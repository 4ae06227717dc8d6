import { readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';

const FOLDER = new URL('../../../src/project/', import.meta.url);

/** What builds commands out of a change that it is given; not a command of its own. */
const BUILDERS = new Set(['onSculpt', 'onShop']);

/** Names of all functions of `src/project` that make a command, as its files export them. */
export function commandNames(): readonly string[] {
  return readdirSync(FOLDER)
    .flatMap((name) => madeIn(readFileSync(new URL(name, FOLDER), 'utf8'), name))
    .filter((name) => !BUILDERS.has(name))
    .sort();
}

function madeIn(text: string, name: string): string[] {
  const file = ts.createSourceFile(name, text, ts.ScriptTarget.Latest);
  const makesCommand = (type: ts.TypeNode | undefined): boolean =>
    type !== undefined && text.slice(type.pos, type.end).trim() === 'Command';
  return file.statements.flatMap((statement) => {
    const isExported =
      ts.canHaveModifiers(statement) &&
      ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) === true;
    if (!isExported) return [];
    if (ts.isFunctionDeclaration(statement))
      return makesCommand(statement.type) && statement.name !== undefined ? [statement.name.text] : [];
    if (!ts.isVariableStatement(statement)) return [];
    return statement.declarationList.declarations.flatMap(({ name: own, initializer }) =>
      initializer !== undefined &&
      ts.isArrowFunction(initializer) &&
      makesCommand(initializer.type) &&
      ts.isIdentifier(own)
        ? [own.text]
        : [],
    );
  });
}
