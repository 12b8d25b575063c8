/**
 * The script of `embed.html`, a page for a frame: `embed.html?src=our-cellar.json` shows the sheet of that file.
 * Other attributes of `<croft-embed>` may stand in the address too (`start-at` for a page of the same site). Its
 * height goes to the page around it as a message: `{ type: 'croftsheet-height', height }`, in pixels.
 */
import './croft-embed.js';

const TAKEN = [
  'lang',
  'src',
  'source',
  'which',
  'database',
  'start-at',
  'sheet',
  'columns',
  'open',
  'keep-as',
  'theme',
  'grid-licence-key',
  'engine-licence-key',
];

/** Anyone can write an address with our site's name in it: what it offers leads nowhere else. */
const isHere = (address: string): boolean =>
  URL.canParse(address, location.href) && new URL(address, location.href).origin === location.origin;

function begin(): void {
  const asked = new URLSearchParams(location.search);
  const embed = document.createElement('croft-embed');
  for (const name of TAKEN) {
    const value = asked.get(name);
    if (value !== null && (name !== 'start-at' || isHere(value))) embed.setAttribute(name, value);
  }
  if (!asked.has('keep-as')) embed.setAttribute('keep-as', asked.get('src') ?? asked.get('source') ?? '');
  document.body.append(embed);
  document.body.style.margin = '0';
  let told = 0;
  const tell = (): void => {
    const height = Math.ceil(embed.getBoundingClientRect().height);
    if (height === told || parent === window) return;
    told = height;
    // To whichever page shows this one; a height is nobody's secret.
    parent.postMessage({ type: 'croftsheet-height', height }, '*');
  };
  new ResizeObserver(tell).observe(embed);
}

if (globalThis.document) begin();
