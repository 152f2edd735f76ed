import { parseSync } from 'vite';

/** One change to a source file that no test should let pass. */
export interface Mutation {
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
  /** Where the changed text begins and ends in the file, in characters. */
  readonly start: number;
  readonly end: number;
  readonly before: string;
  readonly after: string;
}

type Change = Pick<Mutation, 'start' | 'end' | 'after'>;

interface SyntaxNode {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [field: string]: unknown;
}

/** An operator and what it is mistaken for. */
const MISTAKEN: Readonly<Record<string, string>> = {
  '+': '-',
  '-': '+',
  '*': '/',
  '/': '*',
  '<': '<=',
  '<=': '<',
  '>': '>=',
  '>=': '>',
  '===': '!==',
  '!==': '===',
  '&&': '||',
  '||': '&&',
  '+=': '-=',
  '-=': '+=',
  '*=': '/=',
  '/=': '*=',
};

/** Syntax that only wraps a value in a type. */
const WRAPS_VALUE = ['TSAsExpression', 'TSNonNullExpression', 'TSSatisfiesExpression'];

/** Every mutation of the code in a file, in the order of the text: no types, strings, comments or imports. */
export function mutationsOf(file: string, source: string): readonly Mutation[] {
  const { program, errors, comments } = parseSync(file, source);
  if (errors.length > 0) throw new Error(`${file}: ${errors[0]?.message}`);
  const changes: Change[] = [];
  const code = comments.reduce(
    (text, { start, end }) => text.slice(0, start) + ' '.repeat(end - start) + text.slice(end),
    source,
  );
  visit(program, (node) => changes.push(...changesOf(node, code)));
  return changes
    .toSorted((a, b) => a.start - b.start || a.end - b.end)
    .map((change) => ({
      ...change,
      file,
      line: source.slice(0, change.start).split('\n').length,
      before: source.slice(change.start, change.end),
    }));
}

/** The file with the mutation in it. */
export function mutate(source: string, { start, end, after }: Mutation): string {
  return source.slice(0, start) + after + source.slice(end);
}

function visit(value: unknown, each: (node: SyntaxNode) => void): void {
  if (Array.isArray(value)) for (const item of value) visit(item, each);
  else if (isNode(value)) {
    if (value.type === 'ImportDeclaration') return;
    if (value.type.startsWith('TS')) {
      if (WRAPS_VALUE.includes(value.type)) visit(value.expression, each);
      return;
    }
    each(value);
    for (const child of Object.values(value)) visit(child, each);
  }
}

function isNode(value: unknown): value is SyntaxNode {
  return typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string';
}

function changesOf(node: SyntaxNode, code: string): readonly Change[] {
  switch (node.type) {
    case 'BinaryExpression':
    case 'LogicalExpression':
    case 'AssignmentExpression':
      return operatorChanges(node, code);
    case 'UnaryExpression':
      return node.operator === '-' || node.operator === '!'
        ? [{ start: node.start, end: node.start + 1, after: '' }]
        : [];
    case 'Literal':
      return literalChanges(node);
    case 'MemberExpression':
      return boundChanges(node, code);
    case 'IfStatement':
      return leavesEarly(node) ? [{ start: node.start, end: node.end, after: ';' }] : [];
    default:
      return [];
  }
}

function operatorChanges(node: SyntaxNode, code: string): readonly Change[] {
  const after = MISTAKEN[String(node.operator)];
  const [left, right] = [node.left as SyntaxNode, node.right as SyntaxNode];
  if (after === undefined || isText(left) || isText(right)) return [];
  // between the two sides stand the operator, spaces and brackets
  const start = code.indexOf(String(node.operator), left.end);
  return [{ start, end: start + String(node.operator).length, after }];
}

function isText(node: SyntaxNode): boolean {
  return node.type === 'TemplateLiteral' || (node.type === 'Literal' && typeof node.value === 'string');
}

function literalChanges({ start, end, value }: SyntaxNode): readonly Change[] {
  if (value === 0 || value === 1) return [{ start, end, after: String(1 - value) }];
  return typeof value === 'boolean' ? [{ start, end, after: String(!value) }] : [];
}

function boundChanges({ start, end }: SyntaxNode, code: string): readonly Change[] {
  const text = code.slice(start, end);
  if (text === 'Math.min') return [{ start, end, after: 'Math.max' }];
  return text === 'Math.max' ? [{ start, end, after: 'Math.min' }] : [];
}

/** A guard: it does nothing but leave, or go on to the next. */
function leavesEarly(node: SyntaxNode): boolean {
  const LEAVES = ['ReturnStatement', 'ThrowStatement', 'ContinueStatement', 'BreakStatement'];
  const then = node.consequent as SyntaxNode;
  const only = then.type === 'BlockStatement' ? (then.body as readonly SyntaxNode[]) : [then];
  return node.alternate === null && only.length === 1 && LEAVES.includes(only[0]?.type ?? '');
}
