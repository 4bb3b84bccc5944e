import { QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { cache } from '../client/api.ts';
import { App } from './app.tsx';

/** Puts the program into the page. */
export function start(): void {
  const root = document.getElementById('root');
  if (root === null) throw new Error('The page has no place for the program.');
  createRoot(root).render(
    <StrictMode>
      <QueryClientProvider client={cache}>
        <App />
      </QueryClientProvider>
    </StrictMode>,
  );
}
