import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogueFile, catalogueOfSource, catalogueText, translationsOf } from '../support/catalogue.js';

/** Parts of the catalogue of which every text is said in German. A part joins when it is complete. */
const FINISHED = [
  'problems',
  'units',
  'facts',
  'facts/published',
  'planning',
  'book',
  'formulas',
  'live',
  'lessons',
  'lessons/topics',
  'storage',
  'engine',
  'tables',
  'components/formulas',
  'components/functions',
  'components/grid',
  'components/labels',
  'components/lesson',
  'components/lists',
  'components/pictures',
  'components/runway',
  'components/season',
  'components/sheet',
  'components/sheets',
  'components/tables',
  'components/taking',
  'components/week',
  'components/what-if',
  'components/embed',
  'components/book',
  'components/book-menu',
  'components/count',
  'components/history',
  'components/merging',
  'components/notices',
  'components/room',
  'demo',
];

const RULES = new Intl.PluralRules('de').resolvedOptions().pluralCategories;
const catalogue = catalogueOfSource();

const holes = (text: string): string[] => [...new Set(text.match(/\{\d\}/g))].sort();

describe('the catalogue', () => {
  it.each([...catalogue])(
    'has what the source says in %s, and nothing else (npm run words)',
    (part, texts) => {
      const file = catalogueFile(part);
      expect(existsSync(file) ? readFileSync(file, 'utf8') : '').toBe(catalogueText(texts));
    },
  );

  it.each(FINISHED)('has every text of %s in German', (part) => {
    const has = translationsOf(part, 'de');
    expect(catalogue.get(part)!.filter((text) => !has[text])).toEqual([]);
  });
});

describe.each([...catalogue])('German of %s', (part, texts) => {
  const german = Object.entries(translationsOf(part, 'de'));

  it('says nothing that is no longer in the source', () => {
    expect(german.map(([text]) => text).filter((text) => !texts.includes(text))).toEqual([]);
  });

  it('has the holes of the English', () => {
    const wrong = german.filter(([text, said]) => {
      const whole = typeof said === 'string' ? said : (said as Record<string, string>).other;
      return holes(whole ?? '').join() !== holes(text).join();
    });
    expect(wrong).toEqual([]);
  });

  it('has each form that German tells apart, where it has forms', () => {
    const wrong = german.filter(
      ([, said]) =>
        typeof said !== 'string' &&
        Object.keys(said as object)
          .sort()
          .join() !== RULES.join(),
    );
    expect(wrong).toEqual([]);
  });

  it('keeps the space at the ends, by which texts are joined', () => {
    const ends = (text: string) => [text.startsWith(' '), text.endsWith(' ')].join();
    expect(german.filter(([text, said]) => typeof said === 'string' && ends(text) !== ends(said))).toEqual(
      [],
    );
  });
});
