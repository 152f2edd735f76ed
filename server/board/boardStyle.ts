import { CAUTION } from '../../engine/constants.ts';
import { INKS } from '../../engine/plot/index.ts';

const INK_NAMES = Object.entries(INKS)
  .map(([name, color]) => `--${name}:${color}`)
  .join(';');

/** On screen a sheet on the table, on paper the sheet itself, A4 or Letter, with the caution and its number on every page. */
export const BOARD_STYLE = `
:root{${INK_NAMES}}
*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:15px/1.45 Georgia,'DejaVu Serif',serif}
main{max-width:54rem;margin:0 auto;padding:2.2rem 2.6rem 3rem;background:var(--card)}
h1{font-size:1.75rem;line-height:1.2;margin:0 0 .2rem}
h2{font-size:1.2rem;margin:2.2rem 0 .6rem;padding-bottom:.2rem;border-bottom:1.5px solid var(--ink)}
h3{font-size:1rem;margin:1.2rem 0 .3rem}
p{margin:.5rem 0}
.caution{color:var(--pencil);font-size:.88rem}
.sub{color:var(--pencil);margin:0 0 .8rem}
.answer{border:1.5px solid var(--ink);padding:.7rem 1rem;margin:1rem 0}
.answer p{margin:.35rem 0}
.answer .first{font-size:1.35rem;line-height:1.3;font-weight:bold}
.note{color:var(--pencil);font-size:.85rem}
nav ol{columns:2;margin:.4rem 0;padding-left:1.6rem}
a{color:var(--blue)}
figure{margin:1rem 0;break-inside:avoid}
figure svg{display:block;width:100%;max-width:40rem;height:auto;margin:0 auto;font-family:inherit}
figcaption,caption{font-size:.9rem;color:var(--pencil);text-align:left;margin:.3rem 0}
figcaption b,caption b{color:var(--ink)}
.pair{display:grid;grid-template-columns:1fr 1fr;gap:1.4rem;break-inside:avoid}
.pair figure{margin:.6rem 0}
table{width:100%;border-collapse:collapse;margin:1rem 0;font-size:.92rem;font-variant-numeric:tabular-nums}
caption{caption-side:top}
th,td{padding:.22rem .5rem .22rem 0;text-align:left;vertical-align:top;font-weight:normal;border-bottom:1px solid var(--grid)}
thead th{border-bottom:1px solid var(--ink);color:var(--pencil);vertical-align:bottom}
.right{text-align:right;padding-left:.5rem}
.small{font-size:.78rem}
tr,table{break-inside:avoid}
table.long{break-inside:auto}
td:last-child{overflow-wrap:anywhere}
h2+p,h2+ul{break-after:avoid}
td.right{white-space:nowrap}
code{font:.84em/1.4 'DejaVu Sans Mono',Consolas,monospace;overflow-wrap:anywhere}
.command{background:var(--paper);padding:.35rem .6rem;break-inside:avoid}
footer{margin-top:2.4rem;border-top:1px solid var(--faint);padding-top:.5rem}
@media (max-width:40rem){main{padding:1.2rem .9rem}.pair{grid-template-columns:1fr}nav ol{columns:1}table{display:block;overflow-x:auto}}
@page{margin:16mm 15mm 19mm;
@bottom-left{content:"${CAUTION}";font:8pt Georgia,'DejaVu Serif',serif;color:${INKS.pencil};width:88%;text-align:left}
@bottom-right{content:counter(page) " of " counter(pages);font:8pt Georgia,'DejaVu Serif',serif;color:${INKS.pencil};white-space:nowrap}}
@media print{
html{font-size:11.5pt}
body{background:none;font-size:9.4pt;line-height:1.38}
main{max-width:none;padding:0;background:none}
h2,h3{break-after:avoid}
caption{break-after:avoid}
p,li{break-inside:avoid}
h2{margin-top:1.3rem}
figure{margin:.6rem 0}
table{margin:.6rem 0}
table{font-size:9pt}
.small{font-size:8pt}
figcaption,caption{font-size:8.8pt}
th,td{padding-top:.1rem;padding-bottom:.1rem}
figure svg{max-width:110mm}
.pair figure svg{max-width:60mm}
.answer{margin:.6rem .5mm .6rem 0;padding:.4rem .8rem}
.note{font-size:8.4pt}
.command{border:.5pt solid var(--faint)}
footer{display:none}
a{color:inherit;text-decoration:none}
*{-webkit-print-color-adjust:exact;print-color-adjust:exact}}
`;
