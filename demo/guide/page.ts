/** What the pages of the guide do besides showing: elements come when they are near, code is copied, lists are searched. */
import { ELEMENT_ENTRIES } from '../../components/package/entries.mjs';
import './snippets/frame-height.js';

const SOURCES = import.meta.glob([
  '../../components/*/croft-*.ts',
  '../../components/sheet/figures-day.ts',
  '!../../components/notices/*',
]);

/** Loads what defines the elements that stand in a part of the page. */
async function bring(part: ParentNode): Promise<void> {
  const here = Object.entries(ELEMENT_ENTRIES).filter(([tag]) => part.querySelector(tag));
  await Promise.all(here.map(([, source]) => SOURCES[`../../${source}`]?.()));
}

/** An example that waits takes its place. */
function expand(waiting: Element): void {
  const template = waiting.querySelector('template');
  if (!template) return;
  waiting.removeAttribute('data-later');
  template.replaceWith(template.content);
  void bring(waiting);
}

const near = new IntersectionObserver(
  (entries) => {
    for (const { isIntersecting, target } of entries) {
      if (!isIntersecting) continue;
      near.unobserve(target);
      expand(target);
    }
  },
  { rootMargin: '600px 0px' },
);

function say(text: string): void {
  const said = document.querySelector('#said');
  if (said) said.textContent = text;
}

async function copy(button: HTMLButtonElement): Promise<void> {
  const code = button.parentElement?.querySelector('code');
  if (!code) return;
  try {
    await navigator.clipboard.writeText(code.textContent ?? '');
    say('Copied.');
    button.textContent = 'Copied';
    setTimeout(() => {
      button.textContent = 'Copy';
    }, 2000);
  } catch {
    // Refused by the browser: it is chosen, so that a key stroke copies it.
    getSelection()?.selectAllChildren(code);
    say('Press Ctrl or Cmd and C to copy what is chosen.');
  }
}

function filter(field: HTMLInputElement): void {
  const asked = field.value.trim().toLowerCase().split(/\s+/).filter(Boolean);
  const lines = [...document.querySelectorAll<HTMLElement>(field.dataset.filter ?? '')];
  for (const line of lines) {
    const text = line.textContent?.toLowerCase() ?? '';
    line.hidden = !asked.every((word) => text.includes(word));
  }
  for (const section of document.querySelectorAll<HTMLElement>('main section'))
    section.hidden = asked.length > 0 && !section.querySelector('tbody tr:not([hidden])');
  const left = lines.filter(({ hidden }) => !hidden).length;
  say(asked.length === 0 ? '' : left === 1 ? '1 line' : `${left} lines`);
}

/** Shows a function in the reference above. */
function tryFunction(name: string): void {
  const reference = document.querySelector('croft-functions');
  reference?.show(name);
  void reference?.updateComplete.then(() => reference.focus());
}

document.addEventListener('click', ({ target }) => {
  if (!(target instanceof Element)) return;
  const button = target.closest<HTMLButtonElement>('[data-copy]');
  if (button) void copy(button);
  const { function: name } = target.closest<HTMLElement>('a[data-function]')?.dataset ?? {};
  if (name) tryFunction(name);
});
document.addEventListener('input', ({ target }) => {
  if (target instanceof HTMLInputElement && target.dataset.filter) filter(target);
});
addEventListener('beforeprint', () => {
  for (const waiting of document.querySelectorAll('[data-later]')) expand(waiting);
});

void bring(document).then(() => {
  if (document.querySelector('#take-two')) void import('./snippets/events.js');
});
for (const waiting of document.querySelectorAll('[data-later]')) near.observe(waiting);
