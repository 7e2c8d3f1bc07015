/** On every answer of the ledger: no type is guessed, no other site may use it, nothing says where a visit came from. */
export const guardHeaders = {
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), microphone=(), geolocation=()',
} as const

/** What a page may use: nothing but the ledger's own files (Electron's security list; OWASP's CSP advice). */
export const contentSecurityPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "frame-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ')

/** What a page of plain words may use: nothing. */
export const plainPagePolicy =
  "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
