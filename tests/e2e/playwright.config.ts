import { defineConfig } from '@playwright/test'
import { browserPath, quiet } from './browser.ts'

// Found, or installed, once; the workers read this file again and take over what was found.
process.env.CHROMIUM_PATH = browserPath()

/** Tests in a real browser: the pages on loopback, and the desktop program through the same pages. */
export default defineConfig({
  testDir: '..',
  testMatch: ['e2e/**/*.spec.ts', 'desktop/**/*.spec.ts'],
  globalSetup: './build.ts',
  outputDir: '../../test-results',
  workers: 2,
  retries: 0,
  // Long enough for a machine at work: how long something takes is measured by the bench, never by a test.
  timeout: 360_000,
  expect: { timeout: 30_000 },
  forbidOnly: true,
  reporter: 'list',
  use: {
    launchOptions: { executablePath: process.env.CHROMIUM_PATH, args: [...quiet] },
    locale: 'en-GB',
    timezoneId: 'Europe/London',
  },
})
