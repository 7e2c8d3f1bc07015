import { openLedger } from '../../db/file/ledger.ts'
import { createHandler } from '../../electron/server/handler.ts'
import { serveLoopback } from '../../electron/server/hosts/loopback.ts'
import { random } from '../chance.ts'
import { migrations } from '../db/temporary-ledger.ts'

// Serves the ledger named on the command line, says its port and key, and is killed once the first act was done, before it is answered.
const [file = '', at = ''] = process.argv.slice(2)
const now = () => at
const handle = createHandler({ ledger: openLedger(file, { migrations, now, random }), now, pages: '.' })
const { port, key } = await serveLoopback(
  async request => {
    const answer = await handle(request)
    if (answer.ok) process.kill(process.pid, 'SIGKILL')
    return answer
  },
  { port: 0 },
)
process.stdout.write(`${JSON.stringify({ port, key })}\n`)
