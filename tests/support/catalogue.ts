import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { metricWords } from '../../src/units/metric-words.js';
import { declaredTexts } from './declared-texts.js';
import { saidTexts } from './said-texts.js';

/** Folders of the source in the order in which a text that stands in several is put down. */
const LAYERS = [
  'problems',
  'units',
  'facts',
  'facts/published',
  'planning',
  'book',
  'formulas',
  'engine',
  'live',
  'tables',
  'storage',
  'lessons',
  'lessons/topics',
] as const;

const ROOT = join(import.meta.dirname, '../..');

/** Texts of the catalogue by the part that they belong to (`planning`, `components/sheet`), each once, sorted. */
export type Catalogue = ReadonlyMap<string, readonly string[]>;

function filesUnder(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts') && !name.startsWith('words/'))
    .sort()
    .map((name) => join(folder, name));
}

const partOf = (file: string): string => {
  const [first, second = '', third = ''] = file.split('/');
  if (first === 'demo') return 'demo';
  if (first === 'components') return second.endsWith('.ts') ? 'components' : `components/${second}`;
  if (second === 'lessons' && third === 'topics') return 'lessons/topics';
  return second.endsWith('.ts') ? 'problems' : second;
};

const placeOf = (part: string): number => {
  const place = (LAYERS as readonly string[]).indexOf(part);
  return place < 0 ? LAYERS.length : place;
};

/** What the source says now: the catalogue as it should be. */
export function catalogueOfSource(): Catalogue {
  const found = new Map<string, Set<string>>();
  const add = (part: string, text: string) => {
    const texts = found.get(part) ?? new Set<string>();
    found.set(part, texts.add(text));
  };
  for (const [part, texts] of declaredTexts()) for (const text of texts) add(part, text);
  for (const path of [...filesUnder('src'), ...filesUnder('components'), ...filesUnder('demo/app')]) {
    const source = readFileSync(join(ROOT, path), 'utf8');
    if (!/\b(?:say|phrase|some|counted)\b/.test(source)) continue;
    for (const { text } of saidTexts(path, source)) add(partOf(relative('.', path)), text);
  }
  const parts = [...found.keys()].sort((a, b) => placeOf(a) - placeOf(b) || (a < b ? -1 : 1));
  const seen = new Set<string>();
  return new Map(
    parts.map((part) => {
      const said = [...found.get(part)!];
      // In metric measures some are said otherwise; questions of lessons name the measures in which they are asked,
      // and remarks on published figures those in which they are printed.
      const all = new Set([
        ...said,
        ...(['formulas', 'problems', 'units', 'lessons/topics', 'facts/published', 'demo'].includes(part)
          ? []
          : said.map(metricWords)),
      ]);
      const own = [...all].filter((text) => /\p{L}/u.test(text) && !seen.has(text));
      for (const text of own) seen.add(text);
      return [part, own.sort()];
    }),
  );
}

/** Where a part's texts, or their translations into a language, are kept. */
export const catalogueFile = (part: string, language = 'catalogue'): string =>
  join(ROOT, 'src/words', language, `${part.replace('/', '-')}.json`);

/** A part's texts, or their translations, as the file has them. */
export const catalogueText = (texts: object): string => `${JSON.stringify(texts, null, 1)}\n`;

/** Translations of a part as its file has them; none where there is no such file yet. */
export function translationsOf(part: string, language: string): Record<string, unknown> {
  const file = catalogueFile(part, language);
  return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>) : {};
}

/** Names of files in which a language has translations, without their ending. */
export const partsWith = (language: string): string[] =>
  readdirSync(join(ROOT, 'src/words', language)).map((name) => name.replace(/\.json$/, ''));
