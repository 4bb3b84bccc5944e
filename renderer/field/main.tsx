import '../look/tokens.css';
import '../look/base.css';
import '../look/parts.css';
import '../cautions/cautions.css';
import './field.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { FieldPage } from './field-page.tsx';

const root = document.getElementById('root');
if (root === null) throw new Error('The page has no place for the program.');
createRoot(root).render(
  <StrictMode>
    <FieldPage />
  </StrictMode>,
);
