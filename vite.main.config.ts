import { defineConfig } from 'vite';

/** Bundles of the program: the desktop window, the loopback host, the worker of long jobs, and the two commands. */
export default defineConfig({
  build: {
    ssr: true,
    target: 'node24',
    outDir: 'dist/main',
    emptyOutDir: true,
    sourcemap: true,
    minify: false,
    rollupOptions: {
      input: {
        main: 'electron/main.ts',
        host: 'api/serve.ts',
        'jobs.worker': 'api/jobs/jobs.worker.ts',
        farm: 'api/sample/command.ts',
        report: 'api/report/command.ts',
      },
      output: { entryFileNames: '[name].js', chunkFileNames: 'part-[name]-[hash].js' },
    },
  },
  ssr: { noExternal: true, external: ['electron', 'better-sqlite3', 'highs', 'pdfmake'], target: 'node' },
});
