import type { PrintedPart } from '../../api/print/printed-document.ts';
import { useFarm } from '../app/farm-gate.tsx';
import { ReaderProvider } from '../client/reader.tsx';
import { say } from '../words/say.ts';
import type { Paper } from './paper.ts';
import { partsOfPage } from './parts-of-page.ts';
import { PdfButton } from './pdf-button.tsx';

const pageShown = (): Element | null => document.querySelector('.shell-frame .page');

/** The page as it is shown, and the side sheet that is open beside it. */
async function wholePage(paper: Paper): Promise<readonly PrintedPart[]> {
  const shown = [...document.querySelectorAll('.shell-frame .page, .shell-frame .page-and-sheet > .sheet')];
  const parts = [];
  for (const each of shown) parts.push(...(await partsOfPage(each, paper)));
  return parts;
}

/** Saves the whole page. The bar above stands outside the pages' own reader, so it brings the farm's. */
export function PagePdf() {
  const farm = useFarm();
  if (farm === undefined) return null;
  return (
    <ReaderProvider settings={{ system: farm.unitSystem, currency: farm.currency, locale: farm.language }}>
      <PdfButton
        title={() => pageShown()?.querySelector('h1')?.textContent ?? farm.name}
        name={say('Save this page as PDF')}
        make={wholePage}
      />
    </ReaderProvider>
  );
}
