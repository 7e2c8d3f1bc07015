import { join } from 'node:path'
import { breachesOf } from './breaches.ts'
import { sourcesBelow } from './files.ts'

/** `node tests/rooms/check.ts`: says where a house rule is not kept, and ends with 1 where one is not. */
const breaches = breachesOf(sourcesBelow(join(import.meta.dirname, '../..')))
for (const { path, line, rule, what } of breaches) console.error(`${path}:${line} ${rule}: ${what}`)
process.exit(breaches.length > 0 ? 1 : 0)
