/**
 * How a published page looks: warm paper and dark ink, one serif for text, one sans for captions and tables; a dark dress for
 * dark rooms, and a print dress for A4 and Letter in which no figure or row is cut. Contrast on paper: ink 14.0:1, moss 7.9:1,
 * blue 6.9:1, brick 6.1:1, side text 5.6:1.
 */
const latinExt =
  "U+0100-02BA,U+02BD-02C5,U+02C7-02CC,U+02CE-02D7,U+02DD-02FF,U+0304,U+0308,U+0329,U+1D00-1DBF,U+1E00-1E9F,U+1EF2-1EFF,U+2020,U+20A0-20AB,U+20AD-20C0,U+2113,U+2C60-2C7F,U+A720-A7FF";
const face = (family: string, file: string, style: string, range = ""): string =>
  `@font-face{font-family:"${family}";src:url(fonts/${file}.woff2) format("woff2");font-weight:200 900;font-style:${style};font-display:swap${range === "" ? "" : `;unicode-range:${range}`}}`;

export const pageCss = `/* Typefaces: SIL Open Font License 1.1, see fonts/. */
${face("Source Serif 4", "source-serif-4-latin-ext", "normal", latinExt)}
${face("Source Serif 4", "source-serif-4-latin-ext-italic", "italic", latinExt)}
${face("Source Sans 3", "source-sans-3-latin-ext", "normal", latinExt)}
${face("Source Serif 4", "source-serif-4-latin", "normal", "U+0000-00FF,U+0131,U+0152-0153,U+02BB-02BC,U+02C6,U+02DA,U+02DC,U+2000-206F,U+20AC,U+2122,U+2191,U+2193,U+2212,U+2215,U+FEFF,U+FFFD")}
${face("Source Serif 4", "source-serif-4-latin-italic", "italic", "U+0000-00FF,U+0131,U+0152-0153,U+02BB-02BC,U+02C6,U+02DA,U+02DC,U+2000-206F,U+20AC,U+2122,U+2191,U+2193,U+2212,U+2215,U+FEFF,U+FFFD")}
${face("Source Sans 3", "source-sans-3-latin", "normal", "U+0000-00FF,U+0131,U+0152-0153,U+02BB-02BC,U+02C6,U+02DA,U+02DC,U+2000-206F,U+20AC,U+2122,U+2191,U+2193,U+2212,U+2215,U+FEFF,U+FFFD")}
:root{color-scheme:light dark;--paper:#FBF8F1;--leaf:#F3EEE1;--ink:#1F2A24;--moss:#33553F;--blue:#0B5A8F;--brick:#A63A00;--amber:#E9B949;--stone:#5E6660;--rule:#8C8F84;--hair:#D9D4C5;--serif:"Source Serif 4",Georgia,serif;--sans:"Source Sans 3",system-ui,sans-serif}
@media (prefers-color-scheme:dark){:root{--paper:#16201B;--leaf:#1D2A23;--ink:#ECE7DA;--moss:#A9C9B3;--blue:#7CC0EE;--brick:#FF9A66;--amber:#F0C75E;--stone:#A8ADA5;--rule:#7D857E;--hair:#2E3B34}}
*{box-sizing:border-box}
html{font-size:112.5%;scroll-padding-top:1rem;-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0;background:var(--paper);color:var(--ink);font:400 1rem/1.5 var(--serif);font-optical-sizing:auto;font-variant-numeric:oldstyle-nums;hanging-punctuation:first last}
p{margin:0 0 .7em;text-wrap:pretty;overflow-wrap:break-word}
i{font-style:italic}
a{color:var(--blue);text-underline-offset:.15em;text-decoration-thickness:1px}
:focus-visible{outline:3px solid var(--blue);outline-offset:2px}
main:focus{outline:none}
.skip{position:absolute;left:-99rem;top:0;background:var(--paper);padding:.6rem 1rem;z-index:2}
.skip:focus{left:1rem;top:.5rem}
.sheet{max-width:80rem;margin:0 auto;padding:2.4rem clamp(1rem,4vw,3.2rem) 3rem;display:grid;grid-template-columns:minmax(0,1fr);gap:0 3.4rem}
header{border-bottom:1px solid var(--rule);padding-bottom:1rem;margin-bottom:1.4rem}
.family{font-variant-caps:all-small-caps;letter-spacing:.09em;color:var(--moss);margin:0 0 .1rem}
h1{font-weight:400;font-size:clamp(1.9rem,1.2rem + 2.6vw,3.3rem);line-height:1.08;margin:0 0 .35rem;letter-spacing:-.008em;text-wrap:balance}
h1 i{font-weight:500}
.vernacular{font-size:1.25rem;margin:0}
.vernacular .side{font-size:1rem;margin-left:.5rem}
h2{font-weight:500;font-size:1.62rem;line-height:1.15;margin:0 0 .8rem;color:var(--ink)}
h3{font-weight:500;font-size:1.06rem;line-height:1.25;margin:1.6rem 0 .5rem;font-variant-caps:small-caps;letter-spacing:.045em;color:var(--moss)}
h4{font:600 .92rem/1.3 var(--sans);margin:1.2rem 0 .4rem;color:var(--moss)}
section{border-top:1px solid var(--hair);padding-top:1.5rem;margin-top:2.4rem}
section.lead{border-top:0;margin-top:0;padding-top:0}
section.lead p:first-child{font-size:1.36rem;line-height:1.38;max-width:54ch}
main p,main li,aside p{max-width:66ch}
.side{color:var(--stone);font-size:.875rem;line-height:1.45}
.notice{background:var(--leaf);border-left:4px solid var(--amber);padding:.8rem 1.1rem .2rem;margin:0 0 1.8rem;font-size:.95rem}
.notice p{max-width:none}
nav.contents{font:500 .92rem/1.3 var(--sans);margin-bottom:1.8rem}
nav.contents h2{font:600 .8rem/1.3 var(--sans);color:var(--stone);margin:0 0 .5rem;letter-spacing:.02em}
nav.contents ol{list-style:none;margin:0;padding:0;display:flex;flex-wrap:wrap;gap:.1rem 1.3rem}
nav.contents a{display:inline-block;padding:.26rem 0;color:var(--ink);text-decoration:none;border-bottom:1px solid var(--hair)}
nav.contents a:hover{border-bottom-color:var(--moss);color:var(--moss)}
figure{margin:0;break-inside:avoid}
figure img{display:block;width:100%;height:auto;border:1px solid var(--hair);background:var(--leaf)}
figure a{display:block}
figcaption{font:400 .86rem/1.42 var(--sans);padding:.5rem 0 0;max-width:66ch}
figcaption b{font-weight:600}
figcaption .side{font-size:inherit}
.lead-plate{margin:1.6rem 0 0}
.lead-plate img{max-height:86vh;object-fit:contain;object-position:left;width:auto;max-width:100%}
.plates{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,24rem),1fr));gap:2rem 1.8rem;margin-top:1.2rem;align-items:start}
.steps{list-style:none;padding:0;margin:1.6rem 0 0;counter-reset:step}
.steps>li{counter-increment:step;position:relative;padding:0 0 2rem 3.3rem;max-width:none}
.steps>li::before{content:counter(step);position:absolute;left:0;top:-.55rem;font:300 3rem/1 var(--serif);color:var(--moss);font-variant-numeric:oldstyle-nums}
.step{display:grid;grid-template-columns:minmax(0,1fr);gap:1rem 2rem;align-items:start}
.step p{margin-bottom:.3em}
.when{font-variant-caps:all-small-caps;letter-spacing:.06em;color:var(--moss);line-height:1.3}
.what{font-size:1.14rem;line-height:1.35}
.marks{font:500 .72rem/1 var(--sans);font-variant-numeric:lining-nums tabular-nums;vertical-align:.38em;line-height:0}
.marks a{text-decoration:none;padding:.3em .16em;border-radius:2px}
.marks a:hover{text-decoration:underline}
.nb{white-space:nowrap}
td .marks{vertical-align:baseline;line-height:1.5;font-size:.82rem}
td .marks a{display:inline-block;min-width:1.6rem;min-height:1.6rem;text-align:center}
.part{display:grid;grid-template-columns:minmax(0,1fr);padding:.7rem 0 .2rem;border-top:1px dotted var(--hair)}
.part h3{margin:.1rem 0 .2rem}
.whose{font:600 .76rem/1 var(--sans);color:var(--stone);margin-right:.35em}
.ours{border-left:3px solid var(--blue);padding-left:.8rem}
.ours .whose{color:var(--blue)}
.scroll{overflow-x:auto;margin:1rem 0}
table{border-collapse:collapse;width:100%;font:400 .92rem/1.4 var(--sans);font-variant-numeric:tabular-nums lining-nums}
caption{text-align:left;font:400 .86rem/1.4 var(--sans);color:var(--stone);padding-bottom:.5rem}
th,td{text-align:left;vertical-align:top;padding:.42rem 1.1rem .42rem 0;border-bottom:1px solid var(--hair)}
thead th{font-weight:600;font-size:.82rem;border-bottom:1.5px solid var(--rule);white-space:nowrap}
tbody th{font-weight:400}
.ours-value{font-weight:600;white-space:nowrap}
.rivals tr.rival th{font:500 1.04rem/1.35 var(--serif);padding-top:1.1rem;border-bottom:0}
.rivals tr.rival .side,.rivals tr.rival .doubt{font:400 .88rem/1.4 var(--sans);display:block}
.doubt{color:var(--brick);font-weight:600}
.rivals th,.rivals td{width:33%}
.year-strip{display:block;width:100%;min-width:44rem;height:auto}
.year-strip text{font:400 15px var(--sans);fill:var(--ink)}
.year-strip .month{fill:var(--stone);font-size:14px}
.year-strip .band{fill:var(--leaf)}
.year-strip .dot{fill:var(--moss);stroke:var(--paper);stroke-width:1.5}
.year-strip .span{stroke:var(--moss);stroke-width:7;stroke-linecap:round;fill:none}
.year-strip .began{stroke:var(--moss);stroke-width:2;stroke-dasharray:3 4;fill:none}
.evidence{columns:21rem auto;column-gap:2.6rem;padding-left:2.3rem;margin:.9rem 0;font:400 .9rem/1.45 var(--sans)}
main .evidence li{max-width:none;break-inside:avoid;padding:.12rem 0 .4rem .2rem;scroll-margin-top:1rem}
.evidence li::marker{color:var(--stone);font-variant-numeric:tabular-nums lining-nums}
.evidence li:target,.sources li:target{background:var(--leaf);box-shadow:-.4rem 0 0 var(--amber)}
.evidence .date{color:var(--stone)}
.evidence b{font-weight:600}
.evidence .side{font-size:inherit}
.left-out{color:var(--stone)}
.left-out b{font-weight:400}
.why{color:var(--brick)}
.slips,.plain,.sources{margin:.3rem 0;padding-left:1.2rem}
.plain{list-style:none;padding-left:0}
.plain li{padding:.12rem 0}
.slips li,.sources li{padding:.12rem 0}
footer{border-top:1px solid var(--hair);margin-top:3rem;padding-top:1rem;color:var(--stone);font:400 .86rem/1.4 var(--sans)}
@media (min-width:52rem){
.part{grid-template-columns:9.5rem minmax(0,1fr)}
.part h3{text-align:right;padding-right:1.6rem}
.step:has(figure){grid-template-columns:minmax(0,1fr) minmax(0,1fr)}
}
@media (min-width:74rem){
.sheet{grid-template-columns:11.5rem minmax(0,1fr)}
header,.notice,main,footer{grid-column:2}
header{grid-row:1}.notice{grid-row:2}
nav.contents{grid-column:1;grid-row:1/span 4;position:sticky;top:2rem;align-self:start;padding-top:.6rem}
nav.contents ol{display:block}
nav.contents a{display:block;padding:.34rem 0}
}
@media (min-width:100rem){html{font-size:125%}.sheet{max-width:86rem}}
@media (prefers-reduced-motion:no-preference){html{scroll-behavior:smooth}}
@page{margin:17mm 16mm 18mm}
@media print{
:root{--paper:#fff;--leaf:#f4f2ea;--ink:#000;--moss:#23402d;--blue:#0B3F66;--brick:#7A2B00;--amber:#999;--stone:#444;--rule:#777;--hair:#bbb;color-scheme:light}
html{font-size:10.5pt}
body{background:#fff}
.skip,nav.contents{display:none}
.sheet{display:block;max-width:none;padding:0}
section{margin-top:1.2rem;padding-top:.8rem}
h1{font-size:24pt}h2{font-size:15pt}
h2,h3,h4,caption,.when{break-after:avoid}
h2+p,h3+p{break-before:avoid}
section>p.side:first-of-type{break-after:avoid}
p,li{orphans:3;widows:3}
figure,tr,.steps>li,.notice,.evidence li,.slips li,svg{break-inside:avoid}
table:not(.rivals) tbody{break-inside:avoid}
.rivals tr{break-inside:avoid}
.rivals tr.rival{break-after:avoid}
thead{display:table-header-group;break-after:avoid}
main p,main li,aside p{max-width:80ch}
#sources,#credits{font-size:9pt}
#sources .side,#credits .side{font-size:8.6pt}
.scroll{overflow:visible}
.lead-plate img,.plates img,.beside img{max-height:92mm;width:auto;max-width:100%}
.lead-plate img{max-height:120mm}
.plates{grid-template-columns:1fr 1fr;gap:7mm 6mm}
.step:has(figure){grid-template-columns:minmax(0,1fr) 58mm}
.beside img{max-height:52mm}
.part{grid-template-columns:26mm minmax(0,1fr)}
.year-strip{min-width:0}
.marks{font-size:6.5pt}
a{color:inherit;text-decoration:none}
.evidence{font-size:8.6pt;columns:2;column-gap:7mm}
table{font-size:8.8pt}
th,td{padding-right:.5rem}
footer{font-size:8pt}
}
`;
