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
