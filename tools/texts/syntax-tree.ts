import { parseSync } from 'vite';

/** A node of a source file's syntax tree (ESTree with JSX and TypeScript), as far as the tools here look at it. */
export type Node = { readonly type: string; readonly start: number; readonly end: number; readonly [key: string]: unknown };

/** Where a node stands: its parents, nearest first, and the property of the nearest that holds it. */
export type Place = { readonly parents: readonly Node[]; readonly as: string };

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as { type?: unknown }).type === 'string';

/** The syntax tree of a source file. @throws when it cannot be parsed */
export function treeOf(file: string, source: string): Node {
  const parsed = parseSync(file, source, { lang: file.endsWith('x') ? 'tsx' : 'ts' });
  const fault = parsed.errors[0];
  if (fault !== undefined) throw new Error(`${file}: ${fault.message}`);
  return parsed.program as unknown as Node;
}

/** Visits every node, parents first. `visit` answers false to leave out what lies below. */
export function walk(
  node: Node,
  visit: (node: Node, place: Place) => boolean | undefined,
  place: Place = { parents: [], as: '' },
): void {
  if (visit(node, place) === false) return;
  for (const [key, value] of Object.entries(node)) {
    const children = Array.isArray(value) ? value : [value];
    const below: Place = { parents: [node, ...place.parents], as: key };
    for (const child of children) if (isNode(child)) walk(child, visit, below);
  }
}

/** A child node by its name. */
export function child(node: Node, key: string): Node | undefined {
  const value = node[key];
  return isNode(value) ? value : undefined;
}

/** Child nodes that stand in a list. */
export function children(node: Node, key: string): readonly Node[] {
  const value = node[key];
  return Array.isArray(value) ? value.filter(isNode) : [];
}

/** The name of an identifier, of a member's last part, or of a JSX name; '' for anything else. */
export function nameOf(node: Node | undefined): string {
  if (node === undefined) return '';
  if (node.type === 'Identifier' || node.type === 'JSXIdentifier') return String(node['name']);
  if (node.type === 'MemberExpression') return nameOf(child(node, 'property'));
  if (node.type === 'CallExpression' || node.type === 'NewExpression') return nameOf(child(node, 'callee'));
  return node.type === 'Literal' ? String(node['value']) : '';
}
