import { sourcesBelow } from '../rooms/files.ts'
import { type Source, targetOf } from '../rooms/source.ts'

/** Who imports whom, by path from the root; types alone do not count. */
export interface Imports {
  readonly paths: readonly string[]
  /** All that a file imports, itself and through others. */
  readonly reachedFrom: (path: string) => ReadonlySet<string>
  /** All packages and parts of Node that a file rests on. */
  readonly packagesOf: (path: string) => ReadonlySet<string>
}

const values = (source: Source) =>
  source.imports.filter(({ typesOnly }) => !typesOnly).map(({ from }) => from)

/** Reads the imports of the program and of its tests below `root`. */
export function importsBelow(root: string): Imports {
  const sources = sourcesBelow(root, ['core', 'db', 'electron', 'tests'])
  const imported = new Map(sources.map(source => [source.path, values(source)]))

  const reach = (path: string, reached: Set<string>): Set<string> => {
    if (reached.has(path)) return reached
    reached.add(path)
    for (const from of imported.get(path) ?? []) {
      const target = targetOf(path, from)
      if (target !== undefined) reach(target, reached)
    }
    return reached
  }

  const known = new Map<string, ReadonlySet<string>>()
  const reachedFrom = (path: string): ReadonlySet<string> => {
    const reached = known.get(path) ?? reach(path, new Set())
    known.set(path, reached)
    return reached
  }

  const packagesOf = (path: string) =>
    new Set(
      [...reachedFrom(path)].flatMap(file => imported.get(file) ?? []).filter(from => !from.startsWith('.')),
    )

  return { paths: sources.map(({ path }) => path), reachedFrom, packagesOf }
}
