import { defineConfig } from 'vitest/config'

/** Every test that needs no browser: plain Node, the files one after another in a few workers that they share. */
export default defineConfig({
  test: {
    environment: 'node',
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/e2e/**'],
    // A fresh worker for every file takes three times as long; no file leaves anything behind for the next.
    isolate: false,
    // A machine at work is slow: how long something takes is measured by the bench, never by a test.
    testTimeout: 60_000,
  },
})
