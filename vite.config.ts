import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** The pages. The program's own bundles have their own settings. */
export default defineConfig(({ mode }) => ({
  root: 'renderer',
  base: '/',
  plugins: [react()],
  define: { 'import.meta.env.VITE_PARTS_PAGE': JSON.stringify(mode === 'development' ? 'on' : 'off') },
  build: {
    outDir: '../dist/renderer',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    target: 'es2023',
    chunkSizeWarningLimit: 700,
    rolldownOptions: { input: { index: 'renderer/index.html', field: 'renderer/field.html' } },
  },
}));
