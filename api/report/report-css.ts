/** The report's own style: it is one file that opens anywhere and prints well. */
export const reportCss = `
:root { color-scheme: light dark; --ink: #22262a; --paper: #fcfbf7; --line: #cfcabd; --soft: #5d646b; --accent: #12536b; }
@media (prefers-color-scheme: dark) { :root { --ink: #e6e3da; --paper: #15181b; --line: #3a3f44; --soft: #a5abb0; --accent: #7fc4dc; } }
body { margin: 0 auto; max-width: 62rem; padding: 2rem 1.5rem 4rem; background: var(--paper); color: var(--ink); font: 15px/1.5 system-ui, sans-serif; font-variant-numeric: tabular-nums; }
h1 { font-size: 1.9rem; margin: 0; } h2 { margin: 2.6rem 0 .4rem; font-size: 1.35rem; border-bottom: 2px solid var(--accent); padding-bottom: .2rem; } h3 { font-size: 1rem; margin: 1.6rem 0 .4rem; }
nav a { margin-right: 1.1rem; color: var(--accent); } .soft { color: var(--soft); } .mark { border: 1px solid currentColor; border-radius: 3px; padding: 0 .4em; font-size: .85em; }
table { border-collapse: collapse; width: 100%; font-size: .87rem; } th, td { text-align: left; padding: .22rem .5rem; border-bottom: 1px solid var(--line); vertical-align: top; } th { position: sticky; top: 0; background: var(--paper); border-bottom: 2px solid var(--line); } td:first-child, td.d { white-space: nowrap; } td.n, th.n { text-align: right; white-space: nowrap; }
.scroll { max-height: 32rem; overflow: auto; border: 1px solid var(--line); } figure { margin: 1rem 0; } figcaption { font-weight: 600; margin-bottom: .3rem; } svg { width: 100%; height: auto; font: 11px system-ui, sans-serif; } svg text { fill: var(--ink); }
.caution { border-left: 4px solid #a14b3b; padding: .3rem .8rem; margin: .6rem 0; background: color-mix(in srgb, #a14b3b 8%, transparent); }
@media print { .scroll { max-height: none; overflow: visible; border: 0; } th { position: static; } body { max-width: none; padding: 0; font-size: 10pt; } h2 { break-before: page; } tr { break-inside: avoid; } }
`;
