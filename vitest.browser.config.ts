import react from '@vitejs/plugin-react';
import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import { chromiumFlags } from './playwright.config.ts';

/** Tests of the pages' parts in a real Chromium: rows that are only made when in view need a layout. */
export default defineConfig({
  plugins: [react()],
  optimizeDeps: {
    include: [
      'react',
      'react-dom',
      'react-dom/client',
      'react/jsx-dev-runtime',
      '@testing-library/react',
      '@testing-library/user-event',
      '@tanstack/react-table',
      '@tanstack/react-virtual',
      '@tanstack/react-query',
      'react-aria-components',
      'intl-messageformat',
      'recharts',
    ],
  },
  test: {
    include: ['tests/unit/renderer/**/*.test.tsx'],
    testTimeout: 30_000,
    browser: {
      enabled: true,
      headless: true,
      screenshotFailures: false,
      viewport: { width: 1280, height: 860 },
      provider: playwright({
        launchOptions: { executablePath: process.env['CHROMIUM'] || '/usr/bin/chromium', args: chromiumFlags },
      }),
      instances: [{ browser: 'chromium' }],
    },
  },
});
