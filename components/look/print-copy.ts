const RULES = `
  body { font: 10.5pt/1.4 'Avenir Next', 'Segoe UI', Ubuntu, 'Noto Sans', 'Liberation Sans', sans-serif; color: #000; margin: 0; }
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

/**
 * Prints a copy of one part of the page, alone, under a heading. It goes into a frame of its own, since the page
 * around it is not ours to hide; its rules are a constructed sheet, which strict security policies allow.
 */
export function printCopy(heading: string, of: Element): void {
  const frame = document.createElement('iframe');
  frame.title = heading;
  frame.setAttribute('aria-hidden', 'true');
  frame.tabIndex = -1;
  frame.className = 'croft-print';
  Object.assign(frame.style, { position: 'fixed', width: '0', height: '0', border: '0', inset: 'auto' });
  document.body.append(frame);
  const { contentDocument: page, contentWindow: view } = frame;
  if (!page || !view) {
    frame.remove();
    return;
  }
  page.title = heading;
  const { CSSStyleSheet: Sheet } = view as Window & typeof globalThis;
  const rules = new Sheet();
  rules.replaceSync(RULES);
  page.adoptedStyleSheets = [rules];
  const title = page.createElement('h1');
  title.textContent = heading;
  page.body.append(title, page.importNode(of, true));
  view.addEventListener('afterprint', () => frame.remove());
  view.focus();
  view.print();
}
