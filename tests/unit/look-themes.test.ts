import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { tokenText } from '../../components/look/token-text.js';
import { CSS_PROPERTIES } from '../../components/package/css-properties.mjs';

interface AxeColour {
  parseString(text: string): void;
}
interface AxeColours {
  readonly Color: new () => AxeColour;
  getContrast(ground: AxeColour, ink: AxeColour): number;
}
/** Reckons contrast as WCAG has it. */
const { Color, getContrast } = (
  createRequire(import.meta.url)('axe-core') as { commons: { color: AxeColours } }
).commons.color;

const colour = (text: string): AxeColour => {
  const made = new Color();
  made.parseString(text);
  return made;
};

const PAIR = /light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/;
type Scheme = 'light' | 'dark';
type Colours = Readonly<Record<string, Readonly<Record<Scheme, string>>>>;

/** Values of light and dark by name, as `name: …light-dark(a, b)` says them. */
const coloursIn = (text: string, name: RegExp): Colours =>
  Object.fromEntries(
    [...text.matchAll(name)].flatMap(([, key, value]) => {
      const [, light, dark] = PAIR.exec(value!) ?? [];
      return light && dark ? [[key!, { light, dark }]] : [];
    }),
  );

const folder = resolve(import.meta.dirname, '../../components/look/themes');
const text = (file: string): string => readFileSync(resolve(folder, file), 'utf8');
const usual = coloursIn(tokenText, /var\(--croft-([\w-]+), (light-dark\([^;]*\))\);/g);
const marks = coloursIn(tokenText, /--(rose|amber|leaf|sky|plum|stone|\w+-deep): (light-dark\([^;]*\));/g);
const files = readdirSync(folder);

const THEMES: readonly (readonly [string, Colours])[] = [
  ['without a theme', usual],
  ...files.map((file): [string, Colours] => [
    file,
    { ...usual, ...coloursIn(text(file), /--croft-([\w-]+): (light-dark\([^;]*\));/g) },
  ]),
];

/** Words on each ground they stand on: 4.5, as level AA asks. */
const WORDS: readonly (readonly [ink: string, grounds: readonly string[]])[] = [
  ['ink', ['paper', 'raised', 'planning', 'problem-paper']],
  ['quiet-ink', ['paper', 'raised', 'planning']],
  ['accent', ['paper', 'raised', 'planning']],
  ['on-accent', ['accent']],
  ['problem', ['paper', 'raised', 'planning', 'problem-paper']],
];
/** What must be seen and is no word: 3. */
const DRAWN: readonly (readonly [ink: string, grounds: readonly string[]])[] = [
  ['focus', ['paper', 'raised', 'planning']],
  ['own-mark', ['paper', 'raised']],
  ['harvest', ['paper']],
  ['sprout', ['paper']],
];

describe.each(THEMES)('colours %s', (_name, colours) => {
  describe.each(['light', 'dark'] as const)('%s', (scheme) => {
    const contrast = (ink: string, ground: string): number =>
      getContrast(colour(colours[ground]![scheme]), colour(colours[ink]![scheme]));
    it.each(WORDS.flatMap(([ink, grounds]) => grounds.map((ground) => [ink, ground] as const)))(
      '%s can be read on %s',
      (ink, ground) => {
        expect(contrast(ink, ground)).toBeGreaterThanOrEqual(4.5);
      },
    );
    it.each(
      DRAWN.filter(([ink]) => ink in colours).flatMap(([ink, grounds]) =>
        grounds.map((ground) => [ink, ground] as const),
      ),
    )('%s is seen on %s', (ink, ground) => {
      expect(contrast(ink, ground)).toBeGreaterThanOrEqual(3);
    });
    it.each(Object.keys(marks).filter((name) => !name.endsWith('-deep')))('words on %s', (mark) => {
      const ground = colour(marks[mark]![scheme]);
      expect(getContrast(ground, colour(colours.ink![scheme]))).toBeGreaterThanOrEqual(4.5);
      expect(getContrast(ground, colour(marks[`${mark}-deep`]![scheme]))).toBeGreaterThanOrEqual(3);
    });
  });
});

describe.each(files)('%s', (file) => {
  it('sets custom properties only, and only known ones', () => {
    const [, inside] = /^\/\*[^*]*\*\/\n:root \{([^{}]*)\}\n$/.exec(text(file)) ?? [];
    expect(inside).toBeDefined();
    const names = inside!.split(';').flatMap((line) => /^\s*([\w-]+):/.exec(line)?.[1] ?? []);
    const pictures = ['--croft-harvest', '--croft-sprout'];
    for (const name of names) expect([...Object.keys(CSS_PROPERTIES), ...pictures]).toContain(name);
    // All colours of its own: half a theme would mix with ours.
    for (const name of Object.keys(usual)) expect(names).toContain(`--croft-${name}`);
  });
});

it('there are themes to choose from, and the colours were found', () => {
  expect(files.length).toBeGreaterThanOrEqual(3);
  expect(Object.keys(usual).length).toBe(13);
  expect(Object.keys(marks).length).toBe(12);
});
