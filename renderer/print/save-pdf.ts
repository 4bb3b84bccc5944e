import type { PrintedPart } from '../../api/print/printed-document.ts';
import { announce } from '../client/announce.ts';
import { farmOfAddress } from '../client/farm-of-address.ts';
import { saveFile } from '../table/save-file.ts';
import { say } from '../words/say.ts';
import type { Paper } from './paper.ts';

/** Hands the parts to the program and gives the reader the PDF that it makes. */
export async function savePdf(title: string, paper: Paper, parts: readonly PrintedPart[]): Promise<void> {
  const query = new URLSearchParams(window.location.search);
  const farm = farmOfAddress(window.location.search);
  const answer = await fetch('/print', {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...(farm === undefined ? {} : { 'x-bedwright-farm': farm }) },
    body: JSON.stringify({ title, paper, seasonId: query.get('season'), parts }),
  });
  if (!answer.ok) {
    announce(say('The PDF was not made: {why}', { why: await answer.text() }), 'now');
    return;
  }
  saveFile(`${title}.pdf`, await answer.blob());
  announce(say('Saved {title} as a PDF.', { title }));
}
