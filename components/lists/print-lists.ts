import { fitOnPage, measureInFrame, PAPER_FONTS, printInFrame } from '../look/print-frame.js';
import { PAPER } from './lists-paper.js';

const RULES = `
  @page { margin: 12mm; size: portrait; }
  * { box-sizing: border-box; }
  body { font: 11pt/1.35 ${PAPER_FONTS}; color: #000; margin: 0; }
  h1 { font-size: 1.5em; margin: 0 0 0.5em; }
  h4, p { margin: 0; }
  ${PAPER}
`;

/** Points: below the least, a list in hand can no longer be read in a cellar. */
const [LARGEST, LEAST] = [11, 6.5];

type Parts = readonly (Element | null | undefined)[];

/** Prints the parts of the lists alone, as large as one page takes them. */
export const printLists = (heading: string, parts: Parts): void =>
  printInFrame(heading, RULES, fitted(heading, parts));

/** The size of print at which the parts stand on one page, as in `8.5pt`. */
export const sizeOnPaper = (heading: string, parts: Parts): string =>
  measureInFrame(RULES, (body) => {
    fitted(heading, parts)(body);
    return body.style.fontSize;
  }) ?? '';

const fitted =
  (heading: string, parts: Parts) =>
  (body: HTMLElement): void => {
    const page = body.ownerDocument;
    const title = page.createElement('h1');
    title.textContent = heading;
    body.append(title);
    for (const part of parts) if (part) body.append(page.importNode(part, true));
    fitOnPage(body, LARGEST, LEAST);
  };
