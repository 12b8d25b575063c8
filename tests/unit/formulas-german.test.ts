import { afterAll, beforeEach, expect, it } from 'vitest';
import { cannedCrops, canning } from '../../src/facts/canning.js';
import { EXAMPLE_CONTEXT, givenInExample } from '../../src/formulas/example-working.js';
import { callFunction, functionNamed, functions, helpOf } from '../../src/formulas/index.js';
import { speak, spoken } from '../../src/words/index.js';

beforeEach(() => speak('de'));
afterAll(() => speak('en'));

const answer = (name: string, ...given: (string | number)[]) => {
  const found = callFunction(functionNamed(name)!, given, EXAMPLE_CONTEXT);
  return found.ok ? found.value : found.problem.code;
};

it('offers values in German, each of which a function takes for the English one in every language', async () => {
  const wrong: string[] = [];
  for (const tag of ['de', 'en']) {
    for (const declaration of functions) {
      const example = givenInExample(declaration) ?? [];
      for (const [at, { values = [] }] of declaration.arguments.entries()) {
        await speak('de');
        const german = values.map(spoken);
        expect(helpOf(declaration).arguments[at]!.values).toEqual([...new Set(german)]);
        await speak(tag);
        const with_ = (value: string) => {
          const found = callFunction(
            declaration,
            declaration.arguments.map((_arg, i) => (i === at ? value : example[i])),
            EXAMPLE_CONTEXT,
          );
          return JSON.stringify(found.ok ? found.value : found.problem.code);
        };
        for (const [i, value] of values.entries())
          if (with_(german[i]!) !== with_(value)) wrong.push(`${declaration.name} ${value}: ${german[i]}`);
      }
    }
  }
  expect(wrong).toEqual([]);
});

it('knows every pack by its German name, and says it so', () => {
  for (const crop of cannedCrops()) {
    const of = canning(crop);
    if (!of.ok) throw new Error(crop);
    for (const pack of of.value.packs) {
      const found = canning(crop, spoken(pack));
      expect(found.ok && found.value.pack, spoken(pack)).toBe(pack);
      expect(spoken(pack), pack).toMatch(/^(?!.*\b(?:or|with|whole|cubed)\b)/);
    }
  }
  const none = canning('tomato', 'zerdrukt');
  expect(!none.ok && none.problem.message).toMatch(/gemeint ist wohl zerdrückt\?$/);
  expect(!none.ok && none.problem.mend).toMatch(/^ganz oder halbiert, /);
});

it('takes what people write for packs, ways, gauges, measures and bases', () => {
  const german = answer('JARS_PER_BUSHEL', 'Tomaten', 'Pint-Gläser', 'zerdrückt', 'mager');
  expect(german).toEqual(answer('JARS_PER_BUSHEL', 'tomato', 'pint jar', 'crushed', 'lean'));
  expect(german).not.toBeTypeOf('string');
  expect(answer('MEASURE', 3, 'US-Tassen', 'Quart')).toEqual(answer('MEASURE', 3, 'cup', 'quart'));
  // A German pound is 500 g, and a recipe's cup holds as it likes.
  expect(answer('MEASURE', 3, 'Pfund', 'kilogram')).toBe('unknown-container');
  expect(answer('MEASURE', 3, 'Tassen', 'quart')).toBe('unknown-container');
  expect(answer('POUNDS_PER_JAR', 'Tomaten', 'quart', 'Tomatensaft')).toEqual(
    answer('POUNDS_PER_JAR', 'tomato', 'quart', 'juice'),
  );
  expect(answer('POUNDS_PER_JAR', 'Apfel', 'quart', 'Apfelmus')).toEqual(
    answer('POUNDS_PER_JAR', 'apple', 'quart', 'sauce'),
  );
  expect(answer('HEADSPACE', 'Marmelade')).toEqual(answer('HEADSPACE', 'jam'));
  expect(answer('BEST_BY', '2025-08-20', 'Eingeweckt', 'Pfirsiche')).toEqual(
    answer('BEST_BY', '2025-08-20', 'canned', 'peaches'),
  );
  expect(answer('POUNDS_PER_JAR', 'Tomaten', 'quart', 'verkocht')).toBe('unknown-pack');
});
