import './look/tokens.css';
import './look/base.css';
import './look/parts.css';
import './look/print.css';
import './app/shell.css';
import './table/grid.css';
import './fields/fields.css';
import './draw/draw.css';
import './charts/charts.css';
import './working/working.css';
import './cautions/cautions.css';
import './places/beds/beds.css';
import './labels/labels.css';
import './places/farm/farm.css';
import './places/season/proposal/proposal.css';
import './places/season/season.css';
import './places/orders/orders.css';
import './places/costs/costs.css';
import './places/soil/soil.css';
import './places/water/demand.css';
import './places/water/line.css';
import { QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app/app.tsx';
import { cache } from './client/api.ts';
import { startLook } from './look/theme.ts';

startLook();
const root = document.getElementById('root');
if (root === null) throw new Error('The page has no place for the program.');
createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={cache}>
      <App />
    </QueryClientProvider>
  </StrictMode>,
);
