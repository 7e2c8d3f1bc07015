import { pageFolders, type Room, rooms, sharedFolders } from './rooms.ts'
import { type Import, type Node, nodesOf, type Source, targetOf } from './source.ts'

/** One place where a house rule is not kept. */
export interface Breach {
  readonly path: string
  readonly line: number
  readonly rule: 'room' | 'package' | 'page' | 'purity' | 'cycle'
  readonly what: string
}

const isIn = (path: string, folder: string) => path === folder || path.startsWith(`${folder}/`)

/** The room that a file stands in: the one with the longest path. */
const roomOf = (path: string): Room | undefined =>
  rooms.filter(room => isIn(path, room.path)).toSorted((a, b) => b.path.length - a.path.length)[0]

const allows = (packages: readonly string[], name: string) =>
  packages.some(one =>
    one === 'node:' ? name.startsWith('node:') : name === one || name.startsWith(`${one}/`),
  )

function importBreach(path: string, room: Room, { from, line, typesOnly }: Import): Breach | undefined {
  const target = targetOf(path, from)
  if (target === undefined)
    return allows(room.packages, from) ? undefined : { path, line, rule: 'package', what: from }
  const there = roomOf(target)
  if (!there) return undefined
  const typed = room.typesFrom?.includes(target) ?? false
  const fine = room.from.some(one => isIn(target, one)) || (typed && typesOnly)
  return fine ? undefined : { path, line, rule: 'room', what: target }
}

const pageOf = (path: string) => (path.startsWith('renderer/') ? path.split('/')[1] : undefined)

/** A page that imports another page. */
function pageBreach(path: string, { from, line }: Import): Breach | undefined {
  const target = targetOf(path, from)
  const [own, other] = [pageOf(path), target && pageOf(target)]
  if (!own || !other || own === other || !pageFolders.includes(own) || !pageFolders.includes(other))
    return undefined
  return sharedFolders.includes(other) ? undefined : { path, line, rule: 'page', what: target ?? from }
}

/** Each import of a file that goes where it may not. */
export function importBreaches({ path, imports }: Source): Breach[] {
  const room = roomOf(path)
  if (!room) return []
  return imports.flatMap(one =>
    [importBreach(path, room, one), pageBreach(path, one)].filter(breach => breach !== undefined),
  )
}

const nameOf = (node: unknown) => (node as { name?: string } | null)?.name

/** What core may not do: ask for the time, for chance, for the process or for the computer's own language. */
function impurity(node: Node): string | undefined {
  const callee = node.callee as Node | undefined
  const member =
    callee?.type === 'MemberExpression' ? `${nameOf(callee.object)}.${nameOf(callee.property)}` : ''
  const args = (node.arguments ?? []) as readonly unknown[]
  if (node.type === 'CallExpression' && (member === 'Date.now' || member === 'Math.random')) return member
  if (node.type === 'CallExpression' && member.endsWith('.localeCompare') && args.length < 2)
    return 'localeCompare'
  if (node.type === 'NewExpression' && nameOf(callee) === 'Date' && args.length === 0) return 'new Date()'
  if (node.type === 'MemberExpression' && nameOf(node.object) === 'process') return 'process'
  return undefined
}

/** What core does that a pure function does not. */
export function purityBreaches({ path, program, lineAt }: Source): Breach[] {
  if (!isIn(path, 'core')) return []
  return [...nodesOf(program as unknown as Node)].flatMap(([node]) => {
    const what = impurity(node)
    return what === undefined ? [] : [{ path, line: lineAt(node.start), rule: 'purity' as const, what }]
  })
}

/** Rings of files that import one another, types included; each is told once, by its files in order. */
export function cycleBreaches(sources: readonly Source[]): Breach[] {
  const imports = new Map(
    sources.map(({ path, imports: all }) => [path, all.map(one => targetOf(path, one.from))]),
  )
  const state = new Map<string, 'open' | 'done'>()
  const found: Breach[] = []
  const walk = (path: string, trail: readonly string[]): void => {
    if (state.get(path) === 'done') return
    if (state.get(path) === 'open') {
      const ring = [...trail.slice(trail.indexOf(path)), path]
      found.push({ path, line: 1, rule: 'cycle', what: ring.join(' → ') })
      return
    }
    state.set(path, 'open')
    for (const next of imports.get(path) ?? []) if (next && imports.has(next)) walk(next, [...trail, path])
    state.set(path, 'done')
  }
  for (const path of imports.keys()) walk(path, [])
  return found
}

/** Every breach of every house rule in the files. */
export const breachesOf = (sources: readonly Source[]): Breach[] => [
  ...sources.flatMap(importBreaches),
  ...sources.flatMap(purityBreaches),
  ...cycleBreaches(sources),
]
