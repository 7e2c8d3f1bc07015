import { type Refusal, start } from '../../core/words/en/start.ts'
import { guardHeaders, plainPagePolicy } from './guard-headers.ts'

/** The status each refusal answers with. */
const status: Record<Refusal, number> = {
  'request.hostForeign': 403,
  'request.originForeign': 403,
  'request.keyMissing': 401,
  'request.methodUnknown': 405,
  'request.tooLong': 413,
  'request.malformed': 400,
  'request.unknown': 404,
  'request.failed': 500,
}

/** True for paths that programs read, where a refusal is a problem list instead of a page. */
const isData = (path: string) => path === '/api' || path.startsWith('/api/')

const page = ({ heading, advice }: { heading: string; advice: string }) => `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="color-scheme" content="light dark">
<meta name="viewport" content="width=device-width">
<title>${heading}</title>
<h1>${heading}</h1>
<p>${advice}</p>
</html>
`

/**
 * The answer to a request that is turned away: `{ problems: [{ code, field, message }] }` under `/api/`, elsewhere a small
 * page with what to do. Never a stack, never anything from the request.
 */
export function refuse(path: string, refusal: Refusal): Response {
  const words = start.refusals[refusal]
  const data = isData(path)
  const problem = { code: refusal, field: '', message: `${words.heading}. ${words.advice}` }
  return new Response(data ? JSON.stringify({ problems: [problem] }) : page(words), {
    status: status[refusal],
    headers: {
      ...guardHeaders,
      'Content-Type': data ? 'application/json' : 'text/html; charset=utf-8',
      'Content-Security-Policy': plainPagePolicy,
      'Cache-Control': 'no-store',
    },
  })
}
