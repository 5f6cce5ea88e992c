/**
 * Style of the full record as a file of its own, for screen, A4 and Letter in grayscale. Page size is left to the
 * printer; margins hold on both, and nothing is wider than the narrower page.
 */
export const recordStyle = `
@page { margin: 14mm 13mm 16mm; }
@page { @bottom-right { content: counter(page) " / " counter(pages); font: 10pt sans-serif; } }
* { box-sizing: border-box; }
html { font: 12pt/1.4 "Atkinson Hyperlegible Next", "Atkinson Hyperlegible", Verdana, sans-serif; color: #1d2733; background: #fffdf6; }
body { max-width: 184mm; margin: 0 auto; padding: 8mm 0; }
h1 { font-size: 18pt; margin: 0 0 3mm; border-bottom: 2px solid #1d2733; }
h2 { font-size: 13pt; margin: 6mm 0 2mm; break-after: avoid; }
table { width: calc(100% - 1px); border-collapse: collapse; }
thead { display: table-header-group; }
th, td { border: 1px solid #8a8371; padding: 1.5mm 2mm; text-align: left; vertical-align: top; }
td { overflow-wrap: anywhere; }
th { font-weight: 600; background: #f1ead8; white-space: nowrap; }
caption { text-align: left; font-weight: 600; padding: 1mm 0; }
tr { break-inside: avoid; }
.verdict { border: 2px solid #1d2733; padding: 2mm 3mm; margin: 4mm 0; break-inside: avoid; }
.verdict strong { text-transform: uppercase; }
.warning, .caution { border-left: 4px solid #1d2733; padding: 1mm 3mm; margin: 2mm 0; break-inside: avoid; }
.caution { border-left-style: double; border-left-width: 6px; }
.stamp { position: fixed; inset: 0; display: grid; place-items: center; font-size: 68pt; font-weight: 800; letter-spacing: .04em; color: rgb(0 0 0 / 13%); transform: rotate(-38deg); pointer-events: none; }
.actions { padding: 0; list-style: none; }
.actions li { margin: 1mm 0; break-inside: avoid; }
@media print { html { background: #fff; font-size: 11pt; } body { max-width: none; padding: 0; } th { background: #eee; } }
`.trim();
