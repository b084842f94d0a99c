/** How a job sheet looks: on a screen, light or dark, and on paper. An editor lays its own colours over the variables. */
import { PICTURE_STYLE } from './picture-style';

const LIGHT =
  '--ink: #16181d; --paper: #fff; --soft: #55606b; --glass: #eef2f6; --rule: #c9d0d8; --read: #0b5394; --fail: #a51d14; --pass: #17653a;';
const DARK =
  '--ink: #e8eaed; --paper: #17191d; --soft: #a7b0ba; --glass: #262b32; --rule: #434b55; --read: #8ab8f0; --fail: #ff9c92; --pass: #7fd6a2;';

/** High contrast: the colours that the person has chosen; shapes and line styles tell the rest. */
const FORCED =
  '--ink: CanvasText; --paper: Canvas; --soft: CanvasText; --glass: Canvas; --rule: CanvasText; --read: LinkText; --fail: CanvasText; --pass: CanvasText;';

export const SHEET_STYLE = `
:root { color-scheme: light dark; ${LIGHT} --face: "DejaVu Sans", "Segoe UI", system-ui, sans-serif; }
@media (prefers-color-scheme: dark) { :root { ${DARK} } }
@media (forced-colors: active) { :root { ${FORCED} } }
@media print { :root { color-scheme: light; ${LIGHT} } }
body { margin: 0; background: var(--paper); color: var(--ink); font: 14px/1.45 var(--face); }
.sheet { box-sizing: border-box; max-width: 62rem; margin: 0 auto; padding: 1.5rem; }
.sheet header { display: flex; flex-wrap: wrap; gap: 0.5rem 2rem; justify-content: space-between; align-items: end; border-bottom: 2px solid var(--ink); padding-bottom: 0.75rem; }
.sheet h1 { margin: 0; font-size: 1.9rem; line-height: 1.15; overflow-wrap: anywhere; }
.sheet .kind { margin: 0; color: var(--soft); letter-spacing: 0.04em; }
.sheet .verdict { margin: 0; font-size: 1.35rem; font-weight: 700; display: flex; gap: 0.5rem; align-items: center; border: 2px solid currentcolor; border-radius: 4px; padding: 0.2rem 0.7rem; }
.sheet .verdict.reject { border-style: double; border-width: 5px; }
.sheet .verdict:is(.incomplete, .unread) { border-style: dashed; }
.sheet .because { margin: 0.75rem 0 0; }
.sheet .rests { margin: 0.25rem 0 0; color: var(--soft); }
.sheet h2 { margin: 1.75rem 0 0.5rem; font-size: 1.05rem; }
.sheet figure { margin: 0; }
.sheet figcaption { color: var(--soft); font-size: 0.9rem; margin-top: 0.25rem; }
.sheet .scroll { overflow-x: auto; }
.sheet .front { margin-top: 1rem; }
.sheet .front .picture { margin: 0 auto; }
.sheet .pair-of { display: grid; grid-template-columns: repeat(auto-fit, minmax(16rem, 1fr)); gap: 1rem; margin-top: 1rem; }
.sheet .pair-of .picture { margin: 0 auto; }
.sheet .two { display: grid; grid-template-columns: repeat(auto-fit, minmax(20rem, 1fr)); gap: 0 2rem; align-items: start; }
.sheet table { border-collapse: collapse; width: 100%; margin-top: 1.25rem; font-variant-numeric: tabular-nums; }
.sheet caption { text-align: start; font-size: 1.05rem; font-weight: 700; padding-bottom: 0.35rem; }
.sheet th, .sheet td { padding: 0.28rem 0.6rem 0.28rem 0; text-align: start; vertical-align: top; border-bottom: 1px solid var(--rule); }
.sheet thead :is(th, td) { border-bottom: 1px solid var(--ink); color: var(--soft); font-weight: 400; }
.sheet tbody th { font-weight: 400; }
.sheet tr.fail :is(th, td.number, td.outcome) { font-weight: 700; }
.sheet td.number { white-space: nowrap; }
.sheet td.bar { min-width: 8rem; }
.sheet td.bar .picture { width: 11rem; }
.sheet td.outcome { white-space: nowrap; }
.sheet .icon { display: inline-block; width: 1.1em; height: 1.1em; vertical-align: -0.2em; }
.sheet .verdict .icon { width: 1.2em; height: 1.2em; }
.sheet td.row, .sheet .assumed { color: var(--soft); font-size: 0.86rem; }
.sheet td.read { color: var(--read); }
.sheet .nothing { color: var(--soft); }
.sheet pre { margin: 0; padding: 0.75rem 1rem; border: 1px solid var(--rule); font: 0.88rem/1.5 "DejaVu Sans Mono", ui-monospace, monospace; white-space: pre-wrap; overflow-wrap: anywhere; }
.sheet .cautions { margin-top: 1.75rem; border-top: 2px solid var(--ink); padding-top: 0.6rem; font-size: 0.9rem; }
.sheet .cautions p { margin: 0.25rem 0; }
@media print {
  @page { size: A4; margin: 12mm 14mm; }
  :root { font-size: 11.5px; }
  body { font-size: 8.4pt; line-height: 1.35; }
  .sheet { max-width: none; padding: 0; }
  .sheet .front .picture { width: 100%; max-height: 100mm; }
  .sheet .pair-of { grid-template-columns: 1fr 1fr; }
  .sheet .pair-of .picture { max-height: 44mm; }
  .sheet .two { grid-template-columns: 3fr 2fr; }
  .sheet th, .sheet td { padding-block: 0.1rem; }
  .sheet td.bar { min-width: 0; width: 30mm; }
  .sheet td.bar .picture { width: 29mm; }
  .sheet .measures tbody th { width: 32mm; }
  .sheet td.row { width: 32%; font-size: 7.4pt; }
  .sheet .assumed, .sheet pre { font-size: 7.4pt; }
  .sheet :is(tr, figure, pre, .cautions) { break-inside: avoid; }
  .sheet caption, .sheet h2, .sheet thead { break-after: avoid; }
  .sheet .scroll { overflow: visible; }
}
${PICTURE_STYLE}
`.trim();
