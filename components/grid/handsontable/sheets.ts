import core from 'handsontable/styles/handsontable.min.css?inline';
import theme from 'handsontable/styles/ht-theme-main.min.css?inline';
import base from './styles-base.css?inline';
import cells from './styles-cells.css?inline';
import editor from './styles-editor.css?inline';
import groups from './styles-groups.css?inline';
import looks from './styles-looks.css?inline';
import marks from './styles-marks.css?inline';
import tokens from './styles-theme.css?inline';

const made = new WeakMap<Document, CSSStyleSheet[]>();

/** The grid's style sheets, made once for a document and shared by every shadow root in it. */
export function sheetsOf(document: Document): CSSStyleSheet[] {
  let sheets = made.get(document);
  if (!sheets) {
    const { CSSStyleSheet: Sheet } = document.defaultView ?? window;
    sheets = [core, theme, base, tokens, cells, looks, marks, groups, editor].map((css) => {
      const sheet = new Sheet();
      sheet.replaceSync(css);
      return sheet;
    });
    made.set(document, sheets);
  }
  return sheets;
}

/** Adds the grid's sheets to a root that has sheets of its own. */
export function adoptSheets(root: ShadowRoot | Document): void {
  const document = root instanceof Document ? root : root.ownerDocument;
  const missing = sheetsOf(document).filter((sheet) => !root.adoptedStyleSheets.includes(sheet));
  if (missing.length > 0) root.adoptedStyleSheets = [...root.adoptedStyleSheets, ...missing];
}

const PLACEHOLDER = 'handsontable-core-styles';

/** The library writes its styles into the page's head for its first menu, unless an element of this id is there. */
export function keepHeadClean(document: Document): void {
  if (document.getElementById(PLACEHOLDER)) return;
  const style = document.createElement('style');
  style.id = PLACEHOLDER;
  document.head.append(style);
}
