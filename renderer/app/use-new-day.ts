import { useEffect } from 'react';
import { cache } from '../client/api.ts';

const LOOK_AGAIN_MS = 60_000;

/** A window left open overnight, or a computer that slept: once the day is another, all is read again, since "today" is the program's. */
export function useNewDay(): void {
  useEffect(() => {
    let day = new Date().toDateString();
    const look = (): void => {
      const now = new Date().toDateString();
      if (now === day) return;
      day = now;
      void cache.invalidateQueries();
    };
    const timer = setInterval(look, LOOK_AGAIN_MS);
    document.addEventListener('visibilitychange', look);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', look);
    };
  }, []);
}
