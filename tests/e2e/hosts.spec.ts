import { expect } from '@playwright/test'
import { onBothHosts } from './on-both-hosts.ts'

onBothHosts(
  'an act reaches the ledger, and a refused one comes back as a list of problems',
  async ({ page }) => {
    const act = (name: string, given: unknown) =>
      page.evaluate(
        async ([path, body]) => {
          const headers = { 'Content-Type': 'application/json' }
          const answer = await fetch(`/api/${path}`, { method: 'POST', headers, body })
          return { status: answer.status, body: await answer.json() }
        },
        [name, JSON.stringify(given)] as const,
      )
    const refused = await act('counter/takeIn', {})
    expect(refused.status).toBe(422)
    expect(refused.body.problems.length).toBeGreaterThan(0)
    const overLong = await act('counter/takeIn', { fault: 'x'.repeat(1024 * 1024) })
    expect(overLong).toMatchObject({ status: 413, body: { problems: [{ code: 'request.tooLong' }] } })
  },
)
