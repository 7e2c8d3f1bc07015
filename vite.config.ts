import { builtinModules } from 'node:module'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

/** What stays outside the bundles of main and hosts: native code, pdfkit's font files, Node and Electron themselves. */
const external = [
  'electron',
  'better-sqlite3',
  'pdfkit',
  ...builtinModules,
  ...builtinModules.map(name => `node:${name}`),
]

const node = (name: string, input: Record<string, string>, format: 'es' | 'cjs') => ({
  consumer: 'server' as const,
  resolve: { noExternal: true as const, external },
  build: {
    outDir: `dist/${name}`,
    emptyOutDir: true,
    target: 'node24',
    rolldownOptions: {
      input,
      external,
      output: { format, entryFileNames: format === 'cjs' ? '[name].cjs' : '[name].js' },
    },
  },
})

/** One `vite build` for the pages, the desktop main process, the loopback host and the preload. */
export default defineConfig({
  root: 'renderer',
  plugins: [react()],
  builder: {},
  build: { outDir: '../dist/client', emptyOutDir: true },
})
void node
