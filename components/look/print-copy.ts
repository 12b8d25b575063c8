import { PAPER_FONTS, printInFrame } from './print-frame.js';

const RULES = `
  body { font: 10.5pt/1.4 ${PAPER_FONTS}; color: #000; margin: 0; }
  h1 { font-size: 15pt; margin: 0 0 8pt; }
  h3 { font-size: 11.5pt; margin: 0; }
  h4 { font-size: 9.5pt; margin: 4pt 0 0; font-weight: 600; }
  ul, ol { list-style: none; margin: 0; padding: 0; }
  body > ol > li, body > ul > li { border-top: 0.5pt solid #888; padding: 5pt 0; break-inside: avoid; }
  .tasks { display: flex; flex-wrap: wrap; gap: 2pt 24pt; }
  .line { display: flex; gap: 5pt; }
  .box { width: 8pt; height: 8pt; border: 0.75pt solid #000; margin-top: 3pt; flex: none; }
  .small { font-size: 9pt; color: #333; }
`;

/** Prints a copy of one part of the page, alone, under a heading. */
export const printCopy = (heading: string, of: Element): void =>
  printInFrame(heading, RULES, (body) => {
    const page = body.ownerDocument;
    const title = page.createElement('h1');
    title.textContent = heading;
    body.append(title, page.importNode(of, true));
  });
