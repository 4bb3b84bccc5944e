import { defineConfig } from '@playwright/test';

export const chromiumFlags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export default defineConfig({
  testDir: 'tests/e2e',
  testMatch: '**/*.e2e.ts',
  timeout: 60_000,
  expect: { timeout: 10_000 },
  // on a busy machine a wait may run out: what passes only the second time is reported as flaky
  retries: process.env['CI'] ? 1 : 0,
  fullyParallel: false,
  workers: 2,
  reporter: 'line',
  outputDir: 'test-results',
  use: {
    viewport: { width: 1280, height: 860 },
    launchOptions: { executablePath: process.env['CHROMIUM'] || '/usr/bin/chromium', args: chromiumFlags },
    trace: 'retain-on-failure',
  },
});
