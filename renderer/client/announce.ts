export type Announcement = { readonly text: string; readonly urgency: 'polite' | 'now'; readonly at: number };

let latest: Announcement = { text: '', urgency: 'polite', at: 0 };
const listeners = new Set<() => void>();

/** Says a result: read out by a screen reader and shown at the foot of the window until the next one. */
export function announce(text: string, urgency: Announcement['urgency'] = 'polite'): void {
  latest = { text, urgency, at: latest.at + 1 };
  for (const listener of listeners) listener();
}

export const announcements = {
  subscribe(listener: () => void): () => void {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
  latest: (): Announcement => latest,
};
