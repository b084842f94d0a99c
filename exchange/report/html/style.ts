/** The looks of the page: system fonts, two colour schemes, and a sheet for paper. */
export const STYLE = `
:root {
  color-scheme: light dark;
  --ground: #fdfcfa; --raised: #ffffff; --ink: #1d2126; --quiet: #565d66; --line: #d9d6cf; --grid: #e9e6df;
  --mark: #22577a; --mark-soft: #7fa3bb; --outside: #a8381f; --note-ground: #fbf3dc; --note-line: #b98a1c; --link: #1b5680;
}
@media (prefers-color-scheme: dark) {
  :root {
    --ground: #15191d; --raised: #1c2126; --ink: #e8e6e1; --quiet: #a7aeb6; --line: #39414a; --grid: #2a3138;
    --mark: #86bde0; --mark-soft: #4f7f9f; --outside: #f2967c; --note-ground: #2b2616; --note-line: #c9a24a; --link: #93c7e8;
  }
}
* { box-sizing: border-box; }
html { scroll-behavior: smooth; }
@media (prefers-reduced-motion: reduce) { html { scroll-behavior: auto; } }
body {
  margin: 0 auto; padding: 2rem clamp(1rem, 4vw, 2.5rem) 5rem; max-width: 64rem; background: var(--ground); color: var(--ink);
  font: 1rem/1.55 system-ui, -apple-system, "Segoe UI", "Noto Sans", Roboto, sans-serif; font-variant-numeric: tabular-nums;
}
h1 { font-size: 2.1rem; line-height: 1.15; margin: 0 0 .5rem; letter-spacing: -.015em; }
h2 { font-size: 1.4rem; line-height: 1.25; margin: 0 0 .75rem; padding-top: .9rem; letter-spacing: -.01em; }
h3 { font-size: 1.08rem; margin: 1.9rem 0 .5rem; }
p { margin: 0 0 .8rem; max-width: 46rem; }
a { color: var(--link); text-underline-offset: .18em; }
a:focus-visible, .scroll:focus-visible { outline: 2px solid var(--link); outline-offset: 2px; }
.scope { color: var(--quiet); max-width: 52rem; }
.cautions { border-left: 4px solid var(--note-line); background: var(--note-ground); padding: .8rem 1rem .1rem; margin: 1.2rem 0; font-size: .92rem; }
.cautions p { max-width: none; margin-bottom: .6rem; }
nav ol { margin: 1.2rem 0 0; padding: 0; list-style: none; display: flex; flex-wrap: wrap; gap: .3rem 1.1rem; }
section { margin-top: 2.2rem; border-top: 1px solid var(--line); }
.cards { display: grid; grid-template-columns: repeat(auto-fit, minmax(11rem, 1fr)); gap: .9rem; margin: .4rem 0 1rem; }
.card { background: var(--raised); border: 1px solid var(--line); border-radius: .5rem; padding: .8rem 1rem; }
.card p { margin: 0; font-size: .87rem; line-height: 1.45; color: var(--quiet); }
.card .what { color: var(--ink); font-weight: 600; }
.card .figure { font-size: 1.85rem; line-height: 1.3; color: var(--ink); font-weight: 600; letter-spacing: -.01em; }
.steps { padding-left: 1.9rem; margin: 0 0 1rem; }
.steps li { margin-bottom: .35rem; max-width: 48rem; }
.note, .nothing, .quiet { color: var(--quiet); }
.note { font-size: .9rem; }
.nothing { font-style: italic; }
.small-sample { display: inline-block; font-size: .74rem; line-height: 1.3; padding: 0 .38em; border: 1px dashed var(--quiet); border-radius: .25rem; color: var(--quiet); white-space: nowrap; }
.scroll { overflow-x: auto; margin: 1rem 0 1.4rem; }
.tall { max-height: 26rem; overflow-y: auto; border-bottom: 1px solid var(--line); }
.tall thead th { position: sticky; top: 0; background: var(--ground); box-shadow: 0 1px 0 var(--quiet); }
table { border-collapse: collapse; font-size: .88rem; line-height: 1.4; min-width: 60%; }
caption { text-align: left; font-weight: 600; padding: 0 0 .35rem; }
th, td { text-align: left; padding: .32rem .9rem .32rem 0; border-bottom: 1px solid var(--line); vertical-align: top; font-weight: normal; }
thead th { color: var(--quiet); font-size: .82rem; border-bottom: 1px solid var(--quiet); vertical-align: bottom; }
.figures { text-align: right; white-space: nowrap; }
th .quiet { white-space: nowrap; }
th[scope="row"] { min-width: 7rem; }
td { min-width: 4.2rem; }
td code { font-size: .95em; overflow-wrap: anywhere; }
code { font-family: ui-monospace, "SF Mono", Menlo, Consolas, "Liberation Mono", monospace; }
dt { font-weight: 600; margin-top: .7rem; }
dd { margin: 0; max-width: 46rem; }
figure { margin: 0; }
figcaption { font-size: .9rem; margin-bottom: .1rem; }
figcaption strong { display: block; }
.pictures { display: grid; grid-template-columns: repeat(auto-fill, minmax(17rem, 1fr)); gap: 1.3rem 1.6rem; margin: 1rem 0; }
svg { display: block; max-width: 100%; height: auto; font-size: 12px; margin: .4rem 0; }
svg.patterns { position: absolute; width: 0; height: 0; }
svg text { fill: var(--ink); }
svg .quiet { fill: var(--quiet); }
.grid { stroke: var(--grid); }
.axis { stroke: var(--quiet); }
.limit { stroke: var(--ink); stroke-dasharray: 4 3; }
.whisker { stroke: var(--mark-soft); stroke-width: 1.5; }
.path { fill: none; stroke: var(--mark); stroke-width: 1.2; }
.bar { fill: var(--mark); }
.outside { fill: url(#hatch); stroke: var(--outside); stroke-width: .8; }
.hatch-ground { fill: var(--ground); }
.hatch-line { stroke: var(--outside); stroke-width: 3; }
.point { fill: var(--mark); }
.small { r: 2.4px; }
.hollow { fill: var(--ground); stroke: var(--mark); stroke-width: 1.5; }
@page { margin: 16mm 14mm; }
@media print {
  :root { --ground: #fff; --raised: #fff; --ink: #000; --quiet: #444; --line: #bbb; --grid: #ddd; --mark: #333; --mark-soft: #777; --outside: #000; --note-ground: #fff; --note-line: #000; --link: #000; }
  body { max-width: none; padding: 0; font-size: 10pt; }
  nav { display: none; }
  .scroll, .tall { overflow: visible; max-height: none; }
  .tall thead th { position: static; box-shadow: none; }
  h2, h3, caption, figcaption { break-after: avoid; }
  svg, tr, .card, figure { break-inside: avoid; }
  svg * { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
}
`;
