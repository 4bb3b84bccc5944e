import type { Page } from '@playwright/test';

/** Widths in CSS pixels: a window of 1,280 at 200 % zoom, the narrowest window, common ones, and the widest. */
export const windows = [
  { width: 640, height: 430 },
  { width: 900, height: 700 },
  { width: 1280, height: 860 },
  { width: 1920, height: 1080 },
  { width: 2560, height: 1440 },
  { width: 3840, height: 2160 },
] as const;
export type Window = (typeof windows)[number];

/** Parts that may scroll sideways inside themselves: tables, boards, drawings and what is typed (WCAG 2.2, 1.4.10: two-dimensional layout). */
const mayScroll =
  '.grid-scroll, .board-scroll, .proposal-scroll, .plan-strips, .working-scroll, .chart-table, .heat-scroll, .label-sheets, .drawing, textarea, input';

/**
 * What doesn't fit the window as it is: parts that scroll sideways and should not, words cut off, controls out of reach at the
 * side, and controls that lie over each other.
 */
export const misfits = (page: Page): Promise<readonly string[]> =>
  page.evaluate(`(() => {
    const mayScroll = ${JSON.stringify(mayScroll)};
    const found = [];
    const sticks = (e) => e !== null && (getComputedStyle(e).position === 'sticky' || sticks(e.parentElement));
    const called = (e) => (e.className?.toString?.() ?? e.tagName) + ' “' + (e.getAttribute('aria-label') ?? e.textContent ?? '').trim().slice(0, 40) + '”';
    const wide = document.documentElement.scrollWidth - window.innerWidth;
    if (wide > 0) found.push('the window scrolls sideways by ' + wide + ' px');
    const dialogs = [...document.querySelectorAll('.veil')];
    const roots = dialogs.length > 0 ? [dialogs.at(-1)] : [...document.querySelectorAll('#root')];
    for (const root of roots) {
      for (const e of root.querySelectorAll('*')) {
        if (e.clientWidth === 0 || e.closest('svg') !== null || !e.checkVisibility({ visibilityProperty: true })) continue;
        if (e.closest('.heard-only, .skip, .print-only, .rail-name, .rail a span') !== null) continue;
        const style = getComputedStyle(e);
        const over = e.scrollWidth - e.clientWidth;
        if (over > 1 && ['auto', 'scroll'].includes(style.overflowX) && e.closest(mayScroll) === null)
          found.push('scrolls sideways by ' + over + ' px: ' + called(e));
        if (over > 2 && style.overflowX !== 'auto' && e.matches('button, label, legend, h1, h2, h3, dt, select') && !e.matches('.head-title, .grid-scroll *'))
          found.push((style.overflowX === 'visible' ? 'words run over: ' : 'words cut off: ') + called(e));
        if (!e.matches('button, a, input, select, textarea, summary, h1, h2, h3, p, [role=tab]')) continue;
        const box = e.getBoundingClientRect();
        if (box.width === 0 || box.height === 0) continue;
        if (e.closest(mayScroll) === null && (box.right > window.innerWidth + 1 || box.left < -1)) found.push('out of the window: ' + called(e));
      }
      const controls = [...root.querySelectorAll('button, a[href], input, select, textarea, summary')].filter((e) => {
        if (e.closest('svg, .heard-only, .skip') !== null || e.disabled || !e.checkVisibility({ visibilityProperty: true, opacityProperty: true })) return false;
        const box = e.getBoundingClientRect();
        const x = box.left + box.width / 2, y = box.top + box.height / 2;
        for (let around = e.parentElement; around !== null; around = around.parentElement) {
          const frame = around.getBoundingClientRect();
          const hides = getComputedStyle(around).overflowY !== 'visible';
          if (hides && (x < frame.left || x > frame.right || y < frame.top || y > frame.bottom)) return false;
        }
        return e.closest('[style*="clip"]') === null && x > 0 && y > 0 && x < window.innerWidth && y < window.innerHeight;
      });
      for (const e of controls) {
        const box = e.getBoundingClientRect();
        const top = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
        if (top === null || top === e || e.contains(top) || top.contains(e) || top.closest('label')?.contains(e)) continue;
        const other = top.closest('button, a, input, select, textarea, summary');
        // in a narrow window the open sheet covers the page
        if (other?.closest('.sheet') !== e.closest('.sheet') && e.closest('main') !== null) continue;
        // what is scrolled lies under a bar that stays
        if (other !== null && sticks(other)) continue;
        if (other !== null && other !== e) found.push(called(e) + ' lies under ' + called(other));
      }
    }
    return [...new Set(found)];
  })()`);

/** How much of the window's height is left for the page itself. */
export const roomForThePage = (page: Page): Promise<number> =>
  page.evaluate(`(document.querySelector('.page')?.clientHeight ?? 0) / window.innerHeight`);
