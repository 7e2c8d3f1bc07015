import { defineConfig } from 'vitest/config'

/** Every test that needs no browser: plain Node, one file after another in its own worker. */
export default defineConfig({
  test: {
    environment: 'node',
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/e2e/**'],
    // A machine at work is slow: how long something takes is measured by the bench, never by a test.
    testTimeout: 60_000,
  },
})
