/** One room of the program: what it may import from, of the rooms below it and of packages. */
export interface Room {
  /** Its folder, or a file of its own. */
  readonly path: string
  readonly from: readonly string[]
  /** Packages, by name; `node:` for all of Node's own. */
  readonly packages: readonly string[]
  /** Rooms from which only types may come. */
  readonly typesFrom?: readonly string[]
}

const small = ['date-fns', '@date-fns/tz', 'libphonenumber-js', 'libphonenumber-js/max', 'zod']
const dbFile = ['core', 'db/schema', 'db/file']
const dbRows = [...dbFile, 'db/rows']
const dbRules = [...dbRows, 'db/rules']
const db = [...dbRules, 'db/books', 'db/read', 'db/papers', 'db/exports', 'db/archive', 'db/verify']

/** Every room, from the lowest up: data goes one way, and nothing below knows what is above. */
export const rooms: readonly Room[] = [
  { path: 'core', from: ['core'], packages: small },
  { path: 'db/schema', from: ['core', 'db/schema'], packages: ['drizzle-orm'] },
  { path: 'db/file', from: dbFile, packages: ['node:', 'better-sqlite3', 'drizzle-orm'] },
  { path: 'db/rows', from: dbRows, packages: ['node:', 'drizzle-orm'] },
  { path: 'db/rules', from: dbRules, packages: ['node:', 'drizzle-orm'] },
  { path: 'db/books', from: [...dbRules, 'db/books', 'db/papers'], packages: ['node:', 'drizzle-orm'] },
  { path: 'db/read', from: [...dbRules, 'db/read'], packages: ['node:', 'drizzle-orm'] },
  { path: 'db/papers', from: [...dbRules, 'db/read', 'db/papers'], packages: ['drizzle-orm'] },
  { path: 'db/exports', from: [...dbRules, 'db/read', 'db/exports'], packages: ['drizzle-orm'] },
  { path: 'db/archive', from: [...dbRows, 'db/archive'], packages: ['node:', 'drizzle-orm'] },
  {
    path: 'db/verify',
    from: [...dbRules, 'db/verify'],
    packages: ['node:', 'better-sqlite3', 'drizzle-orm'],
  },
  { path: 'electron/places.ts', from: [], packages: ['node:'] },
  {
    path: 'electron/papers',
    from: [...db, 'electron/places.ts', 'electron/papers'],
    packages: ['node:', 'pdfkit', 'uqr'],
  },
  { path: 'electron/copies', from: [...db, 'electron/copies'], packages: ['node:'] },
  {
    path: 'electron/server',
    from: [...db, 'electron/places.ts', 'electron/papers', 'electron/copies', 'electron/server'],
    packages: [
      'node:',
      'hono',
      '@hono/zod-validator',
      '@hono/node-server',
      'zod',
      'csv-stringify',
      'ical-generator',
      'date-holidays',
    ],
  },
  {
    path: 'electron/day',
    from: [...db, 'electron/places.ts', 'electron/server', 'electron/day'],
    packages: ['node:', 'zod'],
  },
  {
    path: 'electron/shop',
    from: [
      ...db,
      'electron/places.ts',
      'electron/papers',
      'electron/copies',
      'electron/server',
      'electron/day',
      'electron/shop',
    ],
    packages: ['node:'],
  },
  {
    path: 'electron/desktop',
    from: [
      'core',
      'electron/places.ts',
      'electron/server',
      'electron/shop',
      'electron/desktop',
      'electron/commands/start',
    ],
    packages: ['node:', 'electron', 'zod'],
  },
  {
    path: 'electron/commands',
    from: [
      ...db,
      'electron/places.ts',
      'electron/papers',
      'electron/copies',
      'electron/server',
      'electron/day',
      'electron/shop',
      'electron/commands',
    ],
    packages: ['node:', 'zod', 'vite'],
  },
  {
    path: 'renderer',
    from: ['core', 'renderer'],
    packages: [
      'react',
      'react-dom',
      'react-dom/client',
      '@tanstack/react-query',
      'wouter',
      'downshift',
      'hono/client',
      'csv-parse/browser/esm/sync',
      'csv-parse/browser/esm',
      'country-to-currency',
      '@fontsource-variable/source-sans-3',
      '@fontsource-variable/source-serif-4',
    ],
    typesFrom: ['electron/server/api.ts', 'electron/desktop/bridge.ts'],
  },
]

/** The pages of the ledger in renderer/: none imports another. Those below belong to several pages. */
export const pageFolders = [
  'accounts',
  'bench',
  'counter',
  'exports',
  'paper',
  'register',
  'restore',
  'shelf',
  'shop',
  'stores',
]
/** Folders that every page may import from, by name. */
export const sharedFolders = [
  'parts',
  'shell',
  'theme',
  'repair',
  'condition',
  'register',
  'restore',
  'exports',
  'paper',
]
