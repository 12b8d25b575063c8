/** What the page around the book says, in the languages that the book speaks. */
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import german from '../../src/words/de/demo.json';
import { messages, onLanguage, spoken as spokenElse, spokenTag } from '../../src/words/index.js';

/** Translations of the page's own words; what elements say too stands in theirs. */
const WORDS: Readonly<Record<string, Readonly<Record<string, unknown>>>> = { de: german };

/** Marks a text that is declared once and said later. */
export const phrase = <T extends string>(text: T): T => text;

/** A declared text in the language spoken. Until the elements' words are there, the page's stay English too. */
export function spoken(text: string): string {
  const ours = messages() === null ? undefined : WORDS[spokenTag().split('-')[0] ?? '']?.[text];
  return typeof ours === 'string' ? ours : spokenElse(text);
}

/** A text that a person reads; its English is its key, with holes as `{0}`, `{1}` …. */
export function say(parts: TemplateStringsArray, ...holes: readonly (string | number)[]): string {
  const key = parts.reduce((before, part, i) => `${before}{${i - 1}}${part}`);
  return spoken(key).replace(/\{(\d)\}/g, (_all, i: string) => String(holes[Number(i)] ?? ''));
}

/** Draws an element anew when another language is spoken. */
export class SaidAnew implements ReactiveController {
  #stop: (() => void) | undefined;
  readonly #host: ReactiveControllerHost;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    this.#stop = onLanguage(() => this.#host.requestUpdate());
  }

  hostDisconnected(): void {
    this.#stop?.();
  }
}
