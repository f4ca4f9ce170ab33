import path from 'node:path';
import ts from 'typescript';

const HEADING = {
  exported: '// What the library exports, by name.',
  reached: '// What these are made of, not exported by name.',
};

/** The statement that a declaration stands in: `declare const a: string;` for `a`, itself for the rest. */
const statementOf = (declaration: ts.Declaration): ts.Node =>
  ts.isVariableDeclaration(declaration) ? declaration.parent.parent : declaration;

const isTopLevel = (node: ts.Node): boolean => ts.isSourceFile(node.parent);

/**
 * The public types of a library as one text: every exported declaration and every one that these are made of, without
 * comments, sorted by name. The order of files, imports and lines in the sources does not show.
 *
 * @param folder - declaration files of the library, `index.d.ts` among them
 */
export const describeTypes = (folder: string): string => {
  const index = path.join(folder, 'index.d.ts');
  const program = ts.createProgram([index], { noEmit: true, lib: ['lib.es2022.d.ts'], types: [], strict: true });
  const checker = program.getTypeChecker();
  const module = checker.getSymbolAtLocation(program.getSourceFile(index)!);
  if (!module) throw new RangeError(`${index} exports nothing.`);
  const printer = ts.createPrinter({ removeComments: true });

  const behindAlias = (symbol: ts.Symbol): ts.Symbol =>
    symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
  const ownStatements = (symbol: ts.Symbol): ts.Node[] => {
    const own = (symbol.declarations ?? []).filter((declaration) => declaration.getSourceFile().fileName.startsWith(folder));
    return [...new Set(own.map(statementOf).filter(isTopLevel))];
  };
  const print = (node: ts.Node): string => printer.printNode(ts.EmitHint.Unspecified, node, node.getSourceFile());

  const exported = new Map(checker.getExportsOfModule(module).map((symbol) => [symbol.name, behindAlias(symbol)]));
  const seen = new Set(exported.values());
  const reached: ts.Symbol[] = [];
  const follow = (node: ts.Node): void => {
    const symbol = ts.isIdentifier(node) ? checker.getSymbolAtLocation(node) : undefined;
    const target = symbol && behindAlias(symbol);
    if (target && !seen.has(target) && ownStatements(target).length > 0) {
      seen.add(target);
      reached.push(target);
      ownStatements(target).forEach(follow);
    }
    ts.forEachChild(node, follow);
  };
  for (const symbol of exported.values()) ownStatements(symbol).forEach(follow);

  const entries = [...exported].map(([name, symbol]) => {
    const text = ownStatements(symbol).map(print).join('\n');
    return { name, text: name === symbol.name ? text : `${text}\nexport { ${symbol.name} as ${name} };` };
  });
  const others = reached.map((symbol) => ({ name: symbol.name, text: ownStatements(symbol).map(print).join('\n') }));
  const sorted = (list: typeof entries): string =>
    list
      .sort((a, b) => (a.name < b.name ? -1 : 1))
      .map(({ text }) => text)
      .join('\n');
  return `${[HEADING.exported, sorted(entries), HEADING.reached, sorted(others)].join('\n')}\n`;
};
