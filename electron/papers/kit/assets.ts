import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'

/** Where a file or folder of `assets/` is, found upwards from this file: the same from the sources and from a bundle. */
export function assetPath(name: string, from = import.meta.dirname): string {
  const path = join(from, 'assets', name)
  if (existsSync(path)) return path
  if (dirname(from) === from) throw new Error(`assets/${name} is missing beside the program`)
  return assetPath(name, dirname(from))
}
