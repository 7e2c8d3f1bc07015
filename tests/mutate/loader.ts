import { readFileSync } from 'node:fs'
import { registerHooks, stripTypeScriptTypes } from 'node:module'
import { relative } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'

const stripped = new Map<string, string>()

/** What is loaded anew, and under which name: the modules that a mutant at their top level reaches. */
export interface Anew {
  readonly name: string
  readonly isTouched: (path: string) => boolean
}

let anew: Anew | null = null
let loaded = 0

/** Loads `path` with whatever it imports; what `touched` says is loaded anew, the rest is shared. */
export function load(root: string, path: string, isTouched?: (path: string) => boolean): Promise<unknown> {
  loaded += 1
  anew = isTouched ? { name: String(loaded), isTouched } : null
  return import(`${pathToFileURL(`${root}/${path}`)}${anew ? `?anew=${anew.name}` : ''}`)
}

/** From now on files come with the texts that `textOf` has for them, and `vitest` is the list of tests of `collect.ts`. */
export function takeOver(root: string, textOf: (path: string) => string | undefined): void {
  const collect = pathToFileURL(`${root}/tests/mutate/collect.ts`).href
  const pathOf = (url: string) => relative(root, fileURLToPath(url.split('?')[0] ?? url))
  const isOurs = (url: string) =>
    url.startsWith('file:') && url.split('?')[0]?.endsWith('.ts') && !url.includes('/node_modules/')

  registerHooks({
    resolve(specifier, context, next) {
      if (specifier === 'vitest' && context.parentURL !== collect) return { url: collect, shortCircuit: true }
      const found = next(specifier, context)
      const isAnew =
        anew !== null &&
        isOurs(found.url) &&
        context.parentURL?.includes('?anew=') &&
        anew.isTouched(pathOf(found.url))
      return isAnew ? { ...found, url: `${found.url}?anew=${anew?.name}` } : found
    },
    load(url, context, next) {
      if (!isOurs(url)) return next(url, context)
      const path = pathOf(url)
      const source =
        stripped.get(path) ?? stripTypeScriptTypes(textOf(path) ?? readFileSync(`${root}/${path}`, 'utf8'))
      stripped.set(path, source)
      return { format: 'module', source, shortCircuit: true }
    },
  })
}
