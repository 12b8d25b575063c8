/** Dialogs that stand before the page, and what is printed while one does. */

/** On the dialog that is printed (`base` has how it then looks), and on all that it stands in. */
const [PRINTED, AROUND] = ['data-printed', 'data-around-printed'];

/**
 * Nothing of the page is seen but the dialog, which is in the top layer and says that it is seen; and the page takes
 * no room. What the dialog stands in may be such as the page leaves out on paper, or folds up there, since paper is
 * narrower than the window. Margins are those by which labels fill the paper.
 */
const RULES = `@page { margin: 10mm; }
@media print {
  html { overflow: hidden !important; }
  body { visibility: hidden !important; height: 0 !important; min-height: 0 !important; margin: 0 !important;
    padding: 0 !important; border: 0 !important; overflow: clip !important; }
  [${AROUND}], [${AROUND}]::details-content { display: contents !important; }
}`;

/** Those open now, the uppermost last. */
const open: HTMLDialogElement[] = [];
/** Takes back what printing has put onto the page. */
let printed: (() => void) | null = null;
let alone: CSSStyleSheet | undefined;

/**
 * Opens a dialog before the page. Who prints while it is open gets what it shows, not the page behind it, which
 * nobody sees then; of several, the uppermost.
 */
export function openModal(dialog: HTMLDialogElement): void {
  dialog.showModal();
  if (open.length === 0) {
    addEventListener('beforeprint', beforePrint);
    addEventListener('afterprint', afterPrint);
  }
  open.push(dialog);
  dialog.addEventListener('close', () => forget(dialog), { once: true });
}

function forget(dialog: HTMLDialogElement): void {
  const at = open.indexOf(dialog);
  if (at >= 0) open.splice(at, 1);
  if (open.length > 0) return;
  afterPrint();
  removeEventListener('beforeprint', beforePrint);
  removeEventListener('afterprint', afterPrint);
}

function beforePrint(): void {
  // One that went with what it stood in was not closed.
  for (const each of [...open]) if (!each.isConnected || !each.open) forget(each);
  const top = open.at(-1);
  if (!top || printed) return;
  const sheet = rules();
  const around = whatIsAround(top);
  const roots = new Set([document, ...around.map((each) => each.getRootNode() as Document | ShadowRoot)]);
  top.setAttribute(PRINTED, '');
  for (const each of around) each.setAttribute(AROUND, '');
  for (const root of roots) root.adoptedStyleSheets = [...root.adoptedStyleSheets, sheet];
  printed = () => {
    top.removeAttribute(PRINTED);
    for (const each of around) each.removeAttribute(AROUND);
    for (const root of roots)
      root.adoptedStyleSheets = root.adoptedStyleSheets.filter((each) => each !== sheet);
  };
}

function afterPrint(): void {
  printed?.();
  printed = null;
}

function rules(): CSSStyleSheet {
  if (!alone) {
    alone = new CSSStyleSheet();
    alone.replaceSync(RULES);
  }
  return alone;
}

/** Elements that it stands in, within shadow roots and around them, up to the body. */
function whatIsAround(dialog: Element): Element[] {
  const found: Element[] = [];
  let at: Node | null = dialog;
  for (;;) {
    at = at instanceof Element && at.assignedSlot ? at.assignedSlot : at.parentNode;
    if (at instanceof ShadowRoot) at = at.host;
    if (!(at instanceof Element) || at === document.body) return found;
    found.push(at);
  }
}
