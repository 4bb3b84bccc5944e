import type { Fault } from '../planner/errors.ts';

/** Every way the program says no. The page's switch over these is exhaustive. */
export type RefusalDetail =
  | { readonly code: 'input'; readonly faults: readonly Fault[] }
  | { readonly code: 'not-found'; readonly what: string }
  | { readonly code: 'changed-meanwhile'; readonly what: string }
  | { readonly code: 'in-use'; readonly what: string }
  | { readonly code: 'no-farm' }
  | { readonly code: 'farm-file'; readonly reason: string };

/** What the page gets: the refusal, or our own fault under a reference that the log knows. */
export type ErrorForPage = (RefusalDetail | { readonly code: 'bug'; readonly reference: string }) & { readonly message: string };

const sentenceOf = (detail: RefusalDetail): string => {
  switch (detail.code) {
    case 'input':
      return detail.faults.map((fault) => fault.message).join(' ');
    case 'not-found':
      return `This ${detail.what} is no longer there. Reload the page.`;
    case 'changed-meanwhile':
      return `This ${detail.what} was changed in another window meanwhile. Reload it, then change it again.`;
    case 'in-use':
      return `This ${detail.what} is still in use and was kept.`;
    case 'no-farm':
      return 'No farm is open. Open one or make a new one.';
    case 'farm-file':
      return `The farm file was refused (${detail.reason}).`;
  }
};

/** A request that the program declines, with a sentence for the reader. */
export class Refusal extends Error {
  override readonly name = 'Refusal';
  readonly detail: RefusalDetail;

  constructor(detail: RefusalDetail, message?: string) {
    super(message ?? sentenceOf(detail));
    this.detail = detail;
  }
}
