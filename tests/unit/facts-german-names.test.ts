import { afterEach, describe, expect, it } from 'vitest';
import { blankBook, openBook, parseBook, speak } from '../../src/core.js';
import raw from '../../src/facts/data/groups.json';
import german from '../../src/facts/data/names-de.json';
import {
  allCanningRules,
  canningRules,
  cautionsFor,
  crops,
  FOOD_GROUPS,
  findCrop,
  groupOf,
  livestock,
  livestockNames,
  WAYS,
} from '../../src/facts/index.js';
import { pluralOf, wordsOf } from '../../src/facts/names.js';
import { callFunction, functionNamed } from '../../src/formulas/index.js';
import { foodKey } from '../../src/live/food-key.js';
import { german as translations } from '../../src/words/german.js';

afterEach(() => speak('en'));

const calledIn = (name: string): string | null => {
  const found = findCrop(name);
  return found.ok ? found.value.name : null;
};
const entries = (names: Readonly<Record<string, readonly string[]>>) =>
  Object.entries(names).flatMap(([of, all]) => all.map((entry) => [of, entry.split(', ')] as const));

describe('the table of German names', () => {
  it('names every crop and food of the registry, and nothing else', () => {
    expect(Object.keys(german.crops)).toEqual(crops().map(({ name }) => name));
    const groups: readonly string[] = FOOD_GROUPS;
    for (const group of Object.keys(german.groups)) expect(groups).toContain(group);
    const rules = allCanningRules().map(({ id }) => id);
    for (const id of Object.keys(german.rules)) expect(rules).toContain(id);
    for (const animal of Object.keys(german.animals)) expect(livestockNames()).toContain(animal);
    expect(Object.keys(german.ways)).toEqual([...WAYS]);
    for (const [way, names] of Object.entries(german.ways)) expect(names).toContain(translations.get(way));
  });

  it('knows each crop by what German calls it, one and many', () => {
    const unknown = crops().flatMap(({ name, plural }) =>
      [translations.get(name), translations.get(plural)]
        .filter((said) => calledIn(String(said)) !== name)
        .map((said) => `${name}: ${said}`),
    );
    expect(unknown).toEqual([]);
  });

  it('gives no name to two crops, and takes none from English', () => {
    const keywords = new Map(
      raw.flatMap(({ group, words }) =>
        words.flatMap((word) => [wordsOf(word), pluralOf(wordsOf(word))].map((form) => [form, group])),
      ) as [string, string][],
    );
    const owners = new Map<string, string>();
    for (const [crop, forms] of entries(german.crops)) {
      for (const form of forms) {
        expect(owners.get(wordsOf(form)) ?? crop, form).toBe(crop);
        owners.set(wordsOf(form), crop);
        expect(calledIn(form), form).toBe(crop);
        // Where English has the word too, it goes on meaning the same sort of food.
        expect(groupOf(form), form).toBe(keywords.get(wordsOf(form)) ?? groupOf(crop));
      }
    }
    for (const [group, forms] of entries(german.groups))
      for (const form of forms) expect(groupOf(form), form).toBe(keywords.get(wordsOf(form)) ?? group);
  });
});

describe('a German name', () => {
  it.each([
    ['Tomaten', 'tomato'],
    ['KARTOFFELN', 'potato'],
    ['Möhren', 'carrot'],
    ['moehren', 'carrot'],
    ['Karotte', 'carrot'],
    ['Weisskohl', 'cabbage'],
    ['Weißkohl', 'cabbage'],
    ['Große weiße Bohnen', 'great northern bean'],
    ['grosse weisse bohnen', 'great northern bean'],
    ['Süßkartoffel', 'sweet potato'],
    ['Suesskartoffeln', 'sweet potato'],
    ['Erdäpfel', 'potato'],
  ])('%s is %s', (typed, crop) => expect(calledIn(typed)).toBe(crop));

  it('that is the word for several crops is read as its English word is', () => {
    for (const [typed, word] of [
      ['Bohnen', 'beans'],
      ['Erbsen', 'peas'],
      ['Mais', 'corn'],
      ['Melone', 'melon'],
      ['Salat', 'lettuce'],
      ['weiße Bohnen', 'white beans'],
    ] as const)
      expect(calledIn(typed), typed).toBe(calledIn(word));
    // No one crop, in either language.
    for (const typed of ['Sellerie', 'Rüben', 'Gemüse']) expect(calledIn(typed), typed).toBeNull();
  });

  it('is read alike whatever is spoken, and English ones go on', async () => {
    for (const tag of ['de', 'en']) {
      await speak(tag);
      expect(calledIn('Tomaten')).toBe('tomato');
      expect(calledIn('green beans')).toBe('snap bean');
      expect(callFunction(functionNamed('POUNDS_PER_JAR')!, ['Tomaten'], CONTEXT)).toEqual(
        callFunction(functionNamed('POUNDS_PER_JAR')!, ['tomato'], CONTEXT),
      );
    }
  });

  it('that is mistyped is asked about in German, and in English as ever', async () => {
    const asked = () => {
      const found = findCrop('Radieschn');
      return found.ok ? '' : found.problem.mend;
    };
    expect(asked()).toBe('Write a crop from the Facts sheet, such as tomato or snap bean.');
    await speak('de');
    expect(asked()).toBe('Radieschen schreiben.');
  });

  it('of a food that is no crop tells its group, and what is said with care', () => {
    expect(groupOf('geräucherter Hering')).toBe('fish');
    expect(groupOf('Möhren mit Butter')).toBe('vegetable');
    expect(groupOf('Eingelegte Gurken')).toBe('vegetable');
    expect(cautionsFor('grüne Bohnen', 'canned')).toEqual(cautionsFor('green beans', 'canned'));
    expect(cautionsFor('Wildschwein', 'canned').map(({ id }) => id)).toContain('low-acid');
    expect(cautionsFor('Mayonnäse', 'fresh')).toEqual([]);
    expect(cautionsFor('Majonäse', 'fresh').map(({ id }) => id)).toEqual(['raw-egg']);
    expect(canningRules('Kürbispüree').map(({ id }) => id)).toContain('squash-cubes');
    expect(canningRules('Kürbis')).toEqual(canningRules('pumpkin'));
    expect(canningRules('Tomatensoße').map(({ id }) => id)).toEqual(['add-acid']);
    expect(livestock('Schweine')).toEqual(livestock('hog'));
  });

  it('is one food in the singular and the plural', () => {
    for (const [one, many] of [
      ['Tomate', 'Tomaten'],
      ['Möhre', 'MOEHREN'],
      ['Gewürzgurke', 'Gewürzgurken'],
      ['Erdnuß', 'Erdnüsse'],
      ['tomato', 'Tomatoes'],
    ] as const)
      expect(foodKey(one)).toBe(foodKey(many));
    expect(foodKey('Möhren')).not.toBe(foodKey('Karotten'));
  });
});

const CONTEXT = { asOf: 46_000, basis: 'usual' } as const;

describe('a household that writes German', () => {
  /** The same book, its crops and foods by these names. */
  const plannedWith = (crop: string, food: string, formula: string) => {
    const live = openBook(blankBook('Haus', 'b1'));
    const [bed] = live.insertRows('beds', [{ crop, plants: 10 }]).rows as [string];
    const [line] = live.insertRows('foods', [
      { food, way: 'canned', counted_in: 'quart jar', use_per_week: 1 },
    ]).rows as [string];
    live.insertRows('shelf', [
      { food, way: 'canned', container: 'quart jar', count: 12, put_up_on: '2025-09-01' },
    ]);
    live.apply({ do: 'add sheet', sheet: 'own', title: 'Own' });
    live.apply({ do: 'add column', sheet: 'own', column: 'a', title: 'A', before: null });
    const [cell] = live.insertRows('own', [{}]).rows as [string];
    live.set('own', cell, 'a', formula);
    const of = (sheet: string, row: string, column: string) => ({
      value: live.value(sheet, row, column),
      sources: live.working(sheet, row, column)?.inputs.map(({ source }) => source),
    });
    const found = [
      of('beds', bed, 'expected_pounds'),
      of('beds', bed, 'harvest_from'),
      of('foods', line, 'on_hand'),
      of('foods', line, 'next_best_by'),
      live.value('own', cell, 'a'),
    ];
    const asBook = JSON.stringify(live.toJSON());
    live.close();
    expect(parseBook(asBook).ok).toBe(true);
    return found;
  };

  it('has the published figures, with their sources, as one that writes English', async () => {
    const english = plannedWith('tomato', 'Tomatoes', '=YIELD_PER_PLANT("tomato")');
    expect(english.at(-1)).toBeGreaterThan(0);
    expect(plannedWith('Tomaten', 'Tomaten', '=YIELD_PER_PLANT("Tomaten")')).toEqual(english);
    await speak('de');
    expect(plannedWith('Tomaten', 'Tomaten', '=YIELD_PER_PLANT("Tomaten")').map(valueIn)).toEqual(
      english.map(valueIn),
    );
  });
});

const valueIn = (found: unknown): unknown =>
  typeof found === 'object' && found !== null && 'value' in found ? found.value : found;
