import { problem } from '../../core/problems.ts'
import type { Read } from '../../db/file/ledger.ts'
import { isPerson } from '../../db/rows/people.ts'
import { Refusal } from '../../db/rows/refusal.ts'

/** The number of the person acting, from the request's header; nobody when it is missing, a refusal when it is nobody here. */
export function personOf(read: Read, request: Request): number | null {
  const header = request.headers.get('Countwheel-Person')
  if (header === null) return null
  const id = Number(header)
  if (!Number.isSafeInteger(id) || !isPerson(read, id)) throw new Refusal([problem('person.unknown', '')])
  return id
}

/** The calendar of expected dates goes to everybody; whatever else is taken out has owners' names or the shop's figures. */
const takesBooksOut = (path: string): boolean =>
  path === '/api/pages/dayFile' || (path.startsWith('/exports/') && path !== '/exports/dates.ics')

/** What a request wants to do, by the name under which it can be reserved to some; null where it only looks. */
export function wantedBy(method: string, path: string): string | null {
  if (takesBooksOut(path)) return 'exports.take'
  if (method === 'GET' || method === 'HEAD') return null
  return /^\/api\/(\w+\/\w+)$/.exec(path)?.[1]?.replace('/', '.') ?? path
}
