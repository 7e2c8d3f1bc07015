import { protocol, session } from 'electron'
import { type Handle, limited } from '../server/hosts/limits.ts'
import { refuse } from '../server/refusals.ts'

/** The ledger's own scheme: its pages have one origin that nothing on the network can have. */
export const origin = 'app://ledger'

/** True for the ledger's own pages and papers. */
export const isOwn = (address: string): boolean => address.startsWith(`${origin}/`)

/** Before Electron is ready: the scheme behaves as a secure site does, so that scripts, fetch and CSP work as usual. */
export function claimScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } },
  ])
}

/** Only the ledger's own pages ask, or the window itself as it opens. */
const isForeign = (request: Request) => {
  const from = request.headers.get('origin')
  return !isOwn(request.url) || (from !== null && from !== origin)
}

/** Serves `handle` as app://ledger/ to the window, with the limits of the loopback host. */
export function serveDesktop(handle: Handle): void {
  const inside = limited(handle)
  protocol.handle('app', request =>
    isForeign(request) ? refuse(new URL(request.url).pathname, 'request.originForeign') : inside(request),
  )
}

/** No page gets a camera, a microphone, a place, a device or a notification: Electron would grant them. */
export function denyPermissions(): void {
  session.defaultSession.setPermissionRequestHandler((_contents, _permission, answer) => answer(false))
  session.defaultSession.setPermissionCheckHandler(() => false)
  session.defaultSession.setDevicePermissionHandler(() => false)
}
