import { builtinModules } from 'node:module'
import { fileURLToPath } from 'node:url'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

/** Stays outside the bundles: Electron, Node itself, native code, and pdfkit, which reads its own font files. */
const external = [
  'electron',
  'better-sqlite3',
  'pdfkit',
  ...builtinModules,
  ...builtinModules.map(name => `node:${name}`),
]

/** One program that runs in Node or Electron: a single entry, its packages bundled in. */
const program = (folder: string, entry: string, format: 'es' | 'cjs') => ({
  consumer: 'server' as const,
  resolve: { noExternal: true as const, external },
  build: {
    outDir: here(`dist/${folder}`),
    emptyOutDir: true,
    copyPublicDir: false,
    target: 'node24',
    minify: false,
    rolldownOptions: {
      input: here(entry),
      external,
      output: { format, entryFileNames: format === 'cjs' ? '[name].cjs' : '[name].js' },
    },
  },
})

/** One `vite build` for the pages, the desktop's main process and preload, and the loopback host. */
export default defineConfig({
  root: here('renderer'),
  plugins: [react()],
  builder: {},
  environments: {
    client: { build: { outDir: here('dist/client'), emptyOutDir: true, assetsInlineLimit: 0 } },
    main: program('main', 'electron/desktop/main.ts', 'es'),
    preload: program('preload', 'electron/desktop/preload.ts', 'cjs'),
    host: program('host', 'electron/commands/serve.ts', 'es'),
  },
})
