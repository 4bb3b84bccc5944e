import { QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { cache } from '../client/api.ts';
import { readAddress } from './address.ts';
import { App } from './app.tsx';
import { places } from './places.ts';

/** Puts the program into the page. */
export function start(): void {
  const root = document.getElementById('root');
  if (root === null) throw new Error('The page has no place for the program.');
  // the page's own file comes while the farm's settings are asked for
  const { place } = readAddress(window.location.href);
  places.find(({ name }) => name === place)?.page.ahead();
  createRoot(root).render(
    <StrictMode>
      <QueryClientProvider client={cache}>
        <App />
      </QueryClientProvider>
    </StrictMode>,
  );
}
