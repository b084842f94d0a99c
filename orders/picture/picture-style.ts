/**
 * How the pictures look. Every colour is a variable with a fallback: alone and on paper they are black on white, in an
 * editor they take its theme. What is ordered is drawn in full lines and what is read in broken ones, so that nothing
 * is told by colour alone.
 */
export const PICTURE_STYLE = `
.picture { display: block; max-width: 100%; height: auto; font: 15px/1.2 var(--face, "DejaVu Sans", system-ui, sans-serif); }
.picture text { fill: var(--ink, #16181d); font-variant-numeric: tabular-nums; }
.picture .paper { fill: var(--paper, #fff); }
.picture :is(line, path, circle, rect) { fill: none; stroke: var(--ink, #16181d); stroke-width: 1.4; }
.picture text.eye { font-size: 22px; font-weight: 700; }
.picture text.heading { font-size: 26px; font-weight: 700; }
.picture text.said { font-style: italic; fill: var(--soft, #55606b); }
.picture text.small { font-size: 13px; fill: var(--soft, #55606b); }
.picture .datum { stroke: var(--soft, #55606b); stroke-width: 1; stroke-dasharray: 14 4 2 4; }
.picture .box { stroke: var(--soft, #55606b); stroke-width: 1; }
.picture .box.sample { stroke-width: 1.6; }
.picture .glass { fill: var(--glass, #eef2f6); stroke-width: 1.8; }
.picture .boxed-middle { stroke: var(--soft, #55606b); }
.picture .leader { stroke: var(--soft, #55606b); stroke-width: 0.9; stroke-dasharray: 2 3; }
.picture .blank { stroke: var(--soft, #55606b); stroke-width: 1.4; stroke-dasharray: 1 5; stroke-linecap: round; }
.picture .length .run, .picture .length .end { stroke-width: 1.1; }
.picture .length.plain :is(.run, .end) { stroke: var(--soft, #55606b); }
.picture .length.plain text { fill: var(--soft, #55606b); }
.picture .length.read :is(.run, .end) { stroke: var(--read, #0b5394); }
.picture .length.read .run { stroke-dasharray: 7 4; }
.picture .length.read text, .picture .meridian.read text { fill: var(--read, #0b5394); }
.picture .mark circle, .picture .mark .hair { stroke-width: 1.8; }
.picture .mark.read path { stroke: var(--read, #0b5394); stroke-width: 1.8; stroke-dasharray: 5 3; }
.picture .mark.read .dot { fill: var(--read, #0b5394); stroke: none; }
.picture .mark.spotted rect { stroke: var(--read, #0b5394); stroke-width: 1.8; stroke-dasharray: 2 2; }
.picture .segment.ordered { stroke-width: 1.6; }
.picture .segment.read { stroke: var(--read, #0b5394); stroke-width: 1.6; stroke-dasharray: 7 4; }
.picture .dial { stroke: var(--soft, #55606b); stroke-width: 1; }
.picture .tick { stroke: var(--soft, #55606b); stroke-width: 1; }
.picture .meridian .spoke { stroke-width: 2.2; }
.picture .meridian.read .spoke { stroke: var(--read, #0b5394); stroke-dasharray: 8 5; }
.picture .scale { stroke: var(--soft, #55606b); stroke-width: 1; }
.picture .inside { fill: var(--glass, #eef2f6); stroke: none; }
.picture .limit { stroke-width: 2; }
.picture .house { stroke: var(--soft, #55606b); stroke-dasharray: 3 3; }
.picture .deviation .reach { stroke-width: 3; }
.picture .deviation.fail .reach, .picture .sign.fail .ground { stroke: var(--fail, #a51d14); }
.picture .beyond { fill: var(--fail, #a51d14); stroke: none; }
.picture .sign.pass .ground { fill: var(--pass, #17653a); stroke: none; }
.picture .sign.fail .ground { fill: var(--fail, #a51d14); }
.picture .sign .stroke { stroke: var(--paper, #fff); stroke-width: 2; stroke-linecap: round; stroke-linejoin: round; }
.picture .sign .ring { fill: var(--paper, #fff); stroke-width: 1.8; }
.picture .sign.not-read .ring { stroke-dasharray: 3 3; }
`.trim();
