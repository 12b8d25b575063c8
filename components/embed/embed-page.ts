/**
 * The script of `embed.html`, a page for a frame: `embed.html?src=our-cellar.json` shows the sheet of that file.
 * Other attributes of `<croft-embed>` may stand in the address too. Its height goes to the page around it as a
 * message: `{ type: 'croftsheet-height', height }`, in pixels.
 */
import './croft-embed.js';

const TAKEN = [
  'lang',
  'src',
  'sheet',
  'columns',
  'open',
  'keep-as',
  'theme',
  'grid-licence-key',
  'engine-licence-key',
];

function begin(): void {
  const asked = new URLSearchParams(location.search);
  const embed = document.createElement('croft-embed');
  for (const name of TAKEN) {
    const value = asked.get(name);
    if (value !== null) embed.setAttribute(name, value);
  }
  if (!asked.has('keep-as')) embed.setAttribute('keep-as', asked.get('src') ?? '');
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
