import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Node, nodesBelow, sourceAt } from '../rooms/source.ts'
import { type Change, changesOf } from './changes.ts'

/** One small change of the program: where it is, and what would stand there. */
export interface Mutant {
  readonly id: number
  readonly file: string
  readonly line: number
  readonly kind: string
  readonly from: string
  readonly to: string
}

/** A file in which every mutant waits for its number, and those mutants. */
export interface Switched {
  readonly text: string
  readonly mutants: readonly Mutant[]
}

/** Keys under which a node holds what is not computed: names, and where an import comes from. */
function isFixed(node: Node, key: string): boolean {
  if (key === 'source' || key === 'label') return true
  return (key === 'key' || key === 'property') && !node.computed
}

const onlyTypes = (node: Node) =>
  node.type.startsWith('TS') &&
  !['TSAsExpression', 'TSSatisfiesExpression', 'TSNonNullExpression'].includes(node.type)

/** Nodes whose value is written to: nothing else can stand there. */
const isTarget = (above: Node, key: string) =>
  (above.type === 'AssignmentExpression' && key === 'left') ||
  above.type === 'UpdateExpression' ||
  (above.type === 'AssignmentPattern' && key === 'left') ||
  (above.type === 'VariableDeclarator' && key === 'id') ||
  key === 'params' ||
  (above.type.startsWith('For') && key === 'left')

/** Nodes on the way down a chain `a?.b.c`, which ends as a whole where `a` is missing, and what is called as a method. */
const isLink = (above: Node, key: string, aboveIsLink: boolean) =>
  above.type === 'ChainExpression' ||
  key === 'callee' ||
  (aboveIsLink && (key === 'object' || key === 'expression'))

const decidesHere = (above: Node, key: string) =>
  key === 'test' && ['IfStatement', 'ConditionalExpression'].includes(above.type)

/** The names that the file takes from drizzle-orm. */
const queryWordsOf = (program: Node): Set<string> =>
  new Set(
    (program.body as Node[])
      .filter(({ type, source }) => type === 'ImportDeclaration' && (source as Node).value === 'drizzle-orm')
      .flatMap(({ specifiers }) => (specifiers as Node[]).map(({ local }) => String((local as Node).name))),
  )

/** The source file at `path` below `root` with all its mutants in it; the first gets the number `first`. */
export function switched(root: string, path: string, first: number): Switched {
  const source = readFileSync(join(root, path), 'utf8')
  const { program, lineAt } = sourceAt(root, path)
  const queryWords = queryWordsOf(program as unknown as Node)
  const mutants: Mutant[] = []
  const textOf = (node: Node) => source.slice(node.start, node.end)

  const numbered = (node: Node, { kind, to }: Change): Mutant => {
    const mutant = {
      id: first + mutants.length,
      file: path,
      line: lineAt(node.start),
      kind,
      from: textOf(node),
      to,
    }
    mutants.push(mutant)
    return mutant
  }

  const withChildren = (node: Node, link: boolean): string => {
    let text = ''
    let at = node.start
    for (const [key, below] of nodesBelow(node)) {
      if (below.start < at || isFixed(node, key)) continue
      text += source.slice(at, below.start) + written(below, node, key, link)
      at = below.end
    }
    return text + source.slice(at, node.end)
  }

  const written = (node: Node, above: Node, key: string, aboveIsLink: boolean): string => {
    if (onlyTypes(node) || node.directive) return textOf(node)
    const link = isLink(above, key, aboveIsLink)
    const fixed = isTarget(above, key) || (link && node.type !== 'ChainExpression')
    const place = { textOf, above, queryWords, isCondition: decidesHere(above, key) }
    const found = fixed ? [] : changesOf(node, place).map(change => numbered(node, change))
    const own = withChildren(node, link)
    // Without a semicolon a bracket at the start of a line would go on with the line before.
    if (found.length === 0) return node.type === 'ExpressionStatement' ? `{${own}}` : own
    if (node.type === 'ExpressionStatement') return `{ if (!$mutant(${found[0]?.id})) {${own}} }`
    if (node.type === 'SpreadElement') return `...($mutant(${found[0]?.id}) ? [] : (${own.slice(3)}))`
    return `(${found.map(({ id, to }) => `$mutant(${id}) ? (${to}) : `).join('')}(${own}))`
  }

  return {
    text: withChildren({ ...(program as unknown as Node), start: 0, end: source.length }, false),
    mutants,
  }
}
