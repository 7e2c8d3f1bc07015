import { readFile } from 'node:fs/promises'
import { extname, join } from 'node:path'
import { getMimeType } from 'hono/utils/mime'
import { contentSecurityPolicy, guardHeaders } from './guard-headers.ts'
import { refuse } from './refusals.ts'

/** The path as a person means it, or nothing where it cannot be decoded or tries to climb out of the folder. */
function readablePath(pathname: string): string | undefined {
  try {
    const path = decodeURIComponent(pathname)
    const climbs = path.includes('\0') || path.includes('\\') || path.split('/').includes('..')
    return climbs ? undefined : path
  } catch {
    return undefined
  }
}

/** A file's bytes, or nothing where there is no such file. */
async function fileBytes(file: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
  try {
    return new Uint8Array(await readFile(file))
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code
    if (code === 'ENOENT' || code === 'EISDIR' || code === 'ENOTDIR' || code === 'ENAMETOOLONG')
      return undefined
    throw error
  }
}

/** Files under assets/ carry a hash of their contents in the name: the same name never means other bytes. */
const caching = (path: string) =>
  path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache'

/**
 * Serves the built client in `folder`. A path whose last part has no dot is a page of the ledger and gets
 * index.html; a missing file is 404, an undecodable or climbing path 400, any method but GET and HEAD 405.
 */
export function servePages(folder: string): (request: Request) => Promise<Response> {
  return async request => {
    const { pathname } = new URL(request.url)
    if (request.method !== 'GET' && request.method !== 'HEAD')
      return refuse(pathname, 'request.methodUnknown')
    const path = readablePath(pathname)
    if (path === undefined) return refuse(pathname, 'request.malformed')
    const name = extname(path) === '' ? 'index.html' : path
    const bytes = await fileBytes(join(folder, ...name.split('/').filter(Boolean)))
    if (!bytes) return refuse(pathname, 'request.unknown')
    return new Response(request.method === 'HEAD' ? null : bytes, {
      headers: {
        ...guardHeaders,
        'Content-Security-Policy': contentSecurityPolicy,
        'Content-Type': getMimeType(name) ?? 'application/octet-stream',
        'Content-Length': String(bytes.byteLength),
        'Cache-Control': caching(path),
      },
    })
  }
}
