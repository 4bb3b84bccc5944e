import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { FieldPage } from './field-page.tsx';

/** Puts the field page onto the phone. */
export function start(): void {
  const root = document.getElementById('root');
  if (root === null) throw new Error('The page has no place for the program.');
  createRoot(root).render(
    <StrictMode>
      <FieldPage />
    </StrictMode>,
  );
}
