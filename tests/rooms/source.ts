import { readFileSync } from 'node:fs'
import { join, normalize } from 'node:path'
import { type Program, parseSync } from 'oxc-parser'

/** One import of a file: what is named, and whether only types come from it. */
export interface Import {
  readonly from: string
  readonly line: number
  readonly typesOnly: boolean
}

/** A file as it was read: its path from the root, its imports, and its syntax tree. */
export interface Source {
  readonly path: string
  readonly imports: readonly Import[]
  readonly program: Program
  /** The line (from 1) on which a place in the text lies. */
  readonly lineAt: (offset: number) => number
}

/** A node of the syntax tree, as far as it matters here. */
export interface Node {
  readonly type: string
  readonly start: number
  readonly end: number
  readonly [key: string]: unknown
}

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string'

/** The nodes right below one in the order of the text, each with the key that it stands under. */
export const nodesBelow = (node: Node): (readonly [string, Node])[] =>
  Object.entries(node)
    .flatMap(([key, value]) =>
      key === 'parent'
        ? []
        : (Array.isArray(value) ? value : [value]).filter(isNode).map(below => [key, below] as const),
    )
    .toSorted(([, a], [, b]) => a.start - b.start)

/** Every node of the tree with the one above it. */
export function* nodesOf(node: Node, above?: Node): Generator<readonly [Node, Node | undefined]> {
  yield [node, above]
  for (const [, next] of nodesBelow(node)) yield* nodesOf(next, node)
}

interface Specifier {
  readonly importKind?: string
  readonly exportKind?: string
}

const onlyTypes = (kind: unknown, specifiers: unknown): boolean => {
  const each = (specifiers ?? []) as readonly Specifier[]
  const isType = (one: Specifier) => (one.importKind ?? one.exportKind) === 'type'
  return kind === 'type' || (each.length > 0 && each.every(isType))
}

/** What a node imports: an import, an export from elsewhere, `import()` of a value or of a type. */
function importOf(node: Node): { from: unknown; typesOnly: boolean } | undefined {
  const literal = (value: unknown) => (value as { value?: unknown } | null)?.value
  switch (node.type) {
    case 'ImportDeclaration':
      return { from: literal(node.source), typesOnly: onlyTypes(node.importKind, node.specifiers) }
    case 'ExportNamedDeclaration':
    case 'ExportAllDeclaration':
      return node.source
        ? { from: literal(node.source), typesOnly: onlyTypes(node.exportKind, node.specifiers) }
        : undefined
    case 'ImportExpression':
      return { from: literal(node.source), typesOnly: false }
    case 'TSImportType':
      return { from: literal(node.source) ?? literal((node.argument as Node)?.literal), typesOnly: true }
    default:
      return undefined
  }
}

/** Reads and parses one file below `root`; throws where it does not parse. */
export function sourceAt(root: string, path: string): Source {
  const text = readFileSync(join(root, path), 'utf8')
  const { program, errors } = parseSync(path, text)
  if (errors.length > 0) throw new Error(`${path}: ${errors[0]?.message}`)
  const ends = [...text.matchAll(/\n/g)].map(({ index }) => index)
  const lineAt = (offset: number) => ends.filter(end => end < offset).length + 1
  const imports = [...nodesOf(program as unknown as Node)].flatMap(([node]) => {
    const found = importOf(node)
    if (typeof found?.from !== 'string') return []
    return [{ from: found.from, line: lineAt(node.start), typesOnly: found.typesOnly }]
  })
  return { path, imports, program, lineAt }
}

/** The path from the root that a relative import of `path` means; nothing for a package. */
export const targetOf = (path: string, from: string): string | undefined =>
  from.startsWith('.') ? normalize(join(path, '..', from)) : undefined
