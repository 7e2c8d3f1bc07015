import { join } from 'node:path'
import { createServer, type ProxyOptions } from 'vite'
import { places } from '../places.ts'
import { serveShop } from './serve.ts'
import { whenAskedToEnd } from './start/ending.ts'

/**
 * For work on the program: the pages straight from their sources, changing as they are edited, in front of the real
 * loopback host on a ledger of its own (development.countwheel in the package's folder).
 */
const pagesPort = 5173
const pagesOrigin = `http://127.0.0.1:${pagesPort}`

const shop = await serveShop({ ledger: join(places.root, 'development.countwheel'), demo: false, port: 0 })
const host = `http://127.0.0.1:${shop.loopback.port}`

/** Hands a request of the pages on with the run's key; a request of any other page keeps its Origin and is refused. */
const toHost: ProxyOptions = {
  target: host,
  changeOrigin: true,
  headers: { Authorization: `Bearer ${shop.loopback.key}` },
  configure: proxy => {
    proxy.on('proxyReq', request => {
      if (request.getHeader('origin') === pagesOrigin) request.setHeader('origin', host)
    })
  },
}

const pages = await createServer({
  configFile: join(places.root, 'vite.config.ts'),
  configLoader: 'native', // the bundling one writes a file that node --watch would take for a change
  server: {
    host: '127.0.0.1',
    port: pagesPort,
    strictPort: true,
    proxy: { '/api': toHost, '/papers': toHost },
  },
})
await pages.listen()
pages.printUrls()

whenAskedToEnd(async () => {
  await pages.close()
  await shop.close()
  process.exit(0)
})
