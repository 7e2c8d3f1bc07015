import type { Node } from '../rooms/source.ts'

/** A small change of one node: what kind it is, and the text that would stand there instead. */
export interface Change {
  readonly kind: string
  readonly to: string
}

/** What a change may look at: a node's own text, whether it decides something, and what the file takes from drizzle-orm. */
export interface Place {
  readonly textOf: (node: Node) => string
  readonly isCondition: boolean
  readonly above: Node | undefined
  readonly queryWords: ReadonlySet<string>
}

type Changes = (node: Node, place: Place) => Change[]

const child = (node: Node, key: string): Node => node[key] as Node
const children = (node: Node, key: string): Node[] => (node[key] ?? []) as Node[]

/** A table that answers for its own names alone, not for `toString` and the like. */
const namesFrom = (table: Record<string, string>): ReadonlyMap<string, string> =>
  new Map(Object.entries(table))

const boundaries = namesFrom({ '<': '<=', '<=': '<', '>': '>=', '>=': '>' })
const equalities = new Set(['===', '!==', '==', '!='])
const sums = namesFrom({ '+': '-', '-': '+', '*': '/', '/': '*', '%': '*', '**': '*' })
const assignedSums = namesFrom({ '+=': '-=', '-=': '+=', '*=': '/=', '/=': '*=' })

const forced: Change[] = [
  { kind: 'forced true', to: 'true' },
  { kind: 'forced false', to: 'false' },
]

const decides = (node: Node): boolean =>
  node.type === 'BinaryExpression' &&
  (equalities.has(String(node.operator)) || boundaries.has(String(node.operator)))

const binary: Changes = (node, { textOf }) => {
  const operator = String(node.operator)
  const between = (other: string) => `${textOf(child(node, 'left'))} ${other} ${textOf(child(node, 'right'))}`
  if (decides(node)) {
    const other = boundaries.get(operator)
    return [...(other ? [{ kind: 'boundary', to: between(other) }] : []), ...forced]
  }
  const other = sums.get(operator)
  return other ? [{ kind: 'arithmetic', to: between(other) }] : []
}

const logical: Changes = (node, { textOf }) => {
  const [left, right] = [textOf(child(node, 'left')), textOf(child(node, 'right'))]
  if (node.operator === '??')
    return [
      { kind: 'never missing', to: left },
      { kind: 'always missing', to: right },
    ]
  const other = node.operator === '&&' ? '||' : '&&'
  return [
    { kind: 'logical', to: `(${left}) ${other} (${right})` },
    // A comparison is forced true and false anyway.
    ...(decides(child(node, 'right')) ? [] : [{ kind: 'left alone', to: left }]),
    ...(decides(child(node, 'left')) ? [] : [{ kind: 'right alone', to: right }]),
  ]
}

const unary: Changes = (node, { textOf }) =>
  node.operator === '!' || node.operator === '-'
    ? [{ kind: `without ${node.operator}`, to: textOf(child(node, 'argument')) }]
    : []

/** Numbers one up and one down; beside a sign, up alone, and none where 0 is compared, as the boundary says it. */
const number: Changes = (node, { above, textOf }) => {
  const isCompared = above?.type === 'BinaryExpression' && boundaries.has(String(above.operator))
  if (isCompared && Number(node.value) === 0) return []
  const one = typeof node.value === 'bigint' ? '1n' : '1'
  const signs = above?.type === 'UnaryExpression' ? ['+'] : ['+', '-']
  return signs.map(sign => ({ kind: 'number', to: `${textOf(node)} ${sign} ${one}` }))
}

const literal: Changes = (node, place) => {
  const { value } = node
  if (typeof value === 'boolean') return [{ kind: 'boolean', to: String(!value) }]
  if (typeof value === 'number' || typeof value === 'bigint') return number(node, place)
  const type = place.above?.type
  const compared = type === 'BinaryExpression' || type === 'SwitchCase'
  return typeof value === 'string' && value !== '' && !compared ? [{ kind: 'text', to: "'~'" }] : []
}

const swappedMethods = namesFrom({
  some: 'every',
  every: 'some',
  min: 'max',
  max: 'min',
  floor: 'ceil',
  ceil: 'floor',
  startsWith: 'endsWith',
  endsWith: 'startsWith',
  toUpperCase: 'toLowerCase',
  toLowerCase: 'toUpperCase',
  find: 'findLast',
})

const removedMethods = new Set([
  'filter',
  'slice',
  'sort',
  'toSorted',
  'reverse',
  'toReversed',
  'trim',
  'padStart',
  'where',
  'orderBy',
  'limit',
])

const swappedQueryWords = namesFrom({
  eq: 'ne',
  ne: 'eq',
  lt: 'lte',
  lte: 'lt',
  gt: 'gte',
  gte: 'gt',
  and: 'or',
  or: 'and',
  asc: 'desc',
  desc: 'asc',
  isNull: 'isNotNull',
  isNotNull: 'isNull',
  inArray: 'notInArray',
  notInArray: 'inArray',
})

const call: Changes = (node, { textOf, queryWords }) => {
  const callee = child(node, 'callee')
  const given = children(node, 'arguments').map(textOf).join(', ')
  if (callee.type === 'Identifier') {
    const other = queryWords.has(String(callee.name)) ? swappedQueryWords.get(String(callee.name)) : undefined
    return other ? [{ kind: 'query', to: `$queryWords.${other}(${given})` }] : []
  }
  if (callee.type !== 'MemberExpression' || callee.computed || callee.optional) return []
  const name = String(child(callee, 'property').name)
  const object = textOf(child(callee, 'object'))
  if (removedMethods.has(name)) return [{ kind: `without ${name}`, to: object }]
  const other = swappedMethods.get(name)
  return other ? [{ kind: name, to: `${object}.${other}(${given})` }] : []
}

/** `a?.b` as `a.b`: the first question mark of the chain alone. */
const chain: Changes = (node, { textOf }) => {
  const text = textOf(node)
  const plain = text.replace(/\?\.(?=[A-Za-z_])/, '.').replace(/\?\.(?=[[(])/, '')
  return plain === text ? [] : [{ kind: 'optional', to: plain }]
}

const condition: Changes = (node, { isCondition }) => (isCondition && node.type !== 'Literal' ? forced : [])

const byType: Record<string, Changes> = {
  BinaryExpression: binary,
  LogicalExpression: logical,
  UnaryExpression: (node, place) => [...unary(node, place), ...condition(node, place)],
  Literal: literal,
  CallExpression: (node, place) => [...call(node, place), ...condition(node, place)],
  ChainExpression: chain,
  Identifier: condition,
  MemberExpression: condition,
  ArrayExpression: node =>
    children(node, 'elements').length > 0 ? [{ kind: 'nothing in it', to: '[]' }] : [],
  SpreadElement: () => [{ kind: 'left out', to: '[]' }],
  UpdateExpression: (node, { textOf }) => [
    { kind: 'update', to: textOf(node).replace(/\+\+|--/, found => (found === '++' ? '--' : '++')) },
  ],
  AssignmentExpression: (node, { textOf }) => {
    const other = assignedSums.get(String(node.operator))
    return other
      ? [
          {
            kind: 'arithmetic',
            to: `${textOf(child(node, 'left'))} ${other} ${textOf(child(node, 'right'))}`,
          },
        ]
      : []
  },
  ExpressionStatement: node =>
    child(node, 'expression').type === 'CallExpression' ? [{ kind: 'call left out', to: '' }] : [],
}

/** The changes that may be made to a node, each once. */
export function changesOf(node: Node, place: Place): Change[] {
  const found = byType[node.type]?.(node, place) ?? []
  const own = place.textOf(node)
  return found.filter(({ to }, at) => to !== own && found.findIndex(other => other.to === to) === at)
}
