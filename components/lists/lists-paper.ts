/**
 * How the lists look on paper, whether the whole page is printed or they alone: columns, lines as close as they
 * can be read. Sizes are in em, so that one font size fits all of it on the page.
 */
export const PAPER = `
  .lists { display: block; columns: 3 15em; column-gap: 1.6em; }
  .lists h3 { font-size: 1.2em; margin: 0 0 0.2em; padding-bottom: 0.1em; border-bottom: 1.5pt solid #000; display: flex; justify-content: space-between; gap: 1em; break-after: avoid; }
  .lists h4 { font-size: 1em; margin: 0.5em 0 0.1em; font-weight: 700; break-after: avoid; }
  .lists section { margin: 0 0 1.2em; border: 0; padding: 0; background: none; }
  .lists ul, .lists ol, .safety ul { list-style: none; margin: 0; padding: 0; }
  .lists li { break-inside: avoid; padding: 0; border: 0; }
  .line label { display: grid; grid-template-columns: auto 1fr; gap: 0.5em; padding: 0.14em 0; min-height: 0; font: inherit; }
  .line input { appearance: none; width: 0.9em; height: 0.9em; min-height: 0; margin: 0.2em 0 0; padding: 0; border: 0.75pt solid #000; border-radius: 0; background: none; }
  .line input:checked { background: #000; }
  .line.ticked .text { text-decoration: line-through; }
  .words { display: grid; }
  .text { font-weight: 600; }
  .notes, .care, .small { font-size: 0.86em; color: #333; font-weight: 400; line-height: 1.25; }
  .care { display: block; font-style: italic; }
  .care svg, .safety svg, .left { display: none; }
  .open li { padding: 0.14em 0; }
  .meals li li { padding: 0; }
  .short { display: block; }
  .safety { border-top: 0.75pt solid #888; padding: 0.4em 0 0; margin: 0.4em 0 0; font-size: 0.8em; display: block; background: none; }
  .safety ul { display: block; }
  .safety li { display: inline; }
  .safety li::after { content: ' '; }
`;
