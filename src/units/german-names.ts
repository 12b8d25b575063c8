/**
 * What units and containers are called in German, by their ids. Known whatever language is spoken, so that a formula
 * means the same on every page. A German pound, a cup or a spoon of a recipe holds something else than the US
 * measure: such words alone name nothing here.
 */
const GERMAN: Readonly<Record<string, readonly string[]>> = {
  '4 oz jar': ['4-oz-Glas', '4-oz-Gläser'],
  'half-pint jar': ['Half-Pint-Glas', 'Half-Pint-Gläser'],
  'pint jar': ['Pint-Glas', 'Pint-Gläser'],
  '1½-pint jar': ['1½-Pint-Glas', '1½-Pint-Gläser'],
  'quart jar': ['Quart-Glas', 'Quart-Gläser'],
  'half-gallon jar': ['Halbgallonen-Glas', 'Halbgallonen-Gläser'],
  '250 ml jar': ['250-ml-Glas', '250-ml-Gläser'],
  '500 ml jar': ['500-ml-Glas', '500-ml-Gläser'],
  '1 litre jar': ['1-Liter-Glas', '1-Liter-Gläser', 'Liter-Glas', 'Liter-Gläser'],
  'no. 10 can': ['Dose Nr. 10', 'Dosen Nr. 10'],
  'pint freezer bag': ['Pint-Gefrierbeutel'],
  'quart freezer bag': ['Quart-Gefrierbeutel'],
  'gallon freezer bag': ['Gallonen-Gefrierbeutel'],
  '5-gallon bucket': ['5-Gallonen-Eimer'],
  bucket: ['Eimer'],
  bin: ['Kiste', 'Kisten'],
  piece: ['Stück', 'Stücke'],
  each: ['Stück'],
  dozen: ['Dutzend'],
  pound: ['US-Pfund'],
  ounce: ['Unze', 'Unzen'],
  kilogram: ['Kilogramm', 'Kilo'],
  gram: ['Gramm'],
  ton: ['US-Tonne', 'US-Tonnen'],
  tonne: ['Tonne', 'Tonnen'],
  teaspoon: ['US-Teelöffel'],
  tablespoon: ['US-Esslöffel'],
  'fluid ounce': ['Flüssigunze', 'Flüssigunzen'],
  cup: ['US-Tasse', 'US-Tassen'],
  pint: ['Pint', 'Pints'],
  quart: ['Quart', 'Quarts'],
  gallon: ['US-Gallone', 'US-Gallonen'],
  millilitre: ['Milliliter'],
  litre: ['Liter'],
  'cubic inch': ['Kubikzoll'],
  'cubic foot': ['Kubikfuß'],
  'dry pint': ['Trocken-Pint', 'Trocken-Pints'],
  'dry quart': ['Trocken-Quart', 'Trocken-Quarts'],
  peck: ['Peck', 'Pecks'],
  bushel: ['Scheffel (bu)', 'Scheffel'],
  inch: ['Zoll'],
  foot: ['Fuß'],
  yard: ['Yard', 'Yards'],
  centimetre: ['Zentimeter'],
  metre: ['Meter'],
  'square foot': ['Quadratfuß'],
  'square yard': ['Quadratyard', 'Quadratyards'],
  acre: ['Acre', 'Acres'],
  'square metre': ['Quadratmeter'],
};

const TYPED: Readonly<Record<string, string>> = { ä: 'ae', ö: 'oe', ü: 'ue', ß: 'ss' };

/** German names of a unit or container, as they are written and as they are typed without umlauts. */
export const germanNames = (id: string): readonly string[] =>
  (GERMAN[id] ?? []).flatMap((name) => {
    const typed = name.replace(/[äöüß]/g, (letter) => TYPED[letter] ?? letter);
    return typed === name ? [name] : [name, typed];
  });
