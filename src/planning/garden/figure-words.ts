import { CONTAINERS, measureSystem } from '../../units/index.js';
import { asWritten, messages, say, spoken } from '../../words/index.js';
import { WAYS_KEPT } from '../types.js';
import { CROP_FIGURES, type FigureName, FREEZER, figureText, HEN, readFigureName } from './figure-names.js';
import { cropKey } from './words.js';

/** A figure as it is called in the language and the measures spoken: 'tomato, yield', 'Tomate, Ertrag'. */
export function figureCalled(name: FigureName): string {
  switch (name.what) {
    case 'pounds per container':
      return say`${name.of}, pounds per ${name.container}, ${name.way}`;
    case 'months of best quality':
      return say`${name.of}, months of best quality, ${name.way}`;
    default:
      return `${spoken(name.of)}, ${spoken(name.what)}`;
  }
}

/** A figure that is stored as `text`, as it is called in the language spoken; what names none stays as it is. */
export function figureShown(text: string): string {
  if (messages() === null) return text;
  const read = readFigureName(text);
  return read.ok ? figureCalled(read.value) : text;
}

/** In place of a crop, where only what follows it is wanted. */
const CROP = '§';

/** Figures by what is written after the crop, in these words and measures. */
let endings: {
  readonly of: object | null;
  readonly system: string;
  readonly by: ReadonlyMap<string, FigureName>;
} | null = null;

const comparable = (text: string): string => text.toLowerCase().replace(/\s+/g, ' ').trim();

function byEnding(): ReadonlyMap<string, FigureName> {
  const of = messages();
  const system = measureSystem();
  if (endings?.of === of && endings.system === system) return endings.by;
  const names: FigureName[] = [
    ...CROP_FIGURES.map((what) => ({ of: CROP, what })),
    ...WAYS_KEPT.flatMap((way): FigureName[] => [
      { of: CROP, what: 'months of best quality', way },
      ...CONTAINERS.map(
        ({ id }): FigureName => ({ of: CROP, what: 'pounds per container', container: id, way }),
      ),
    ]),
  ];
  // In customary measures too, in which they are printed and stored.
  const called = (name: FigureName) => [asWritten(() => figureCalled(name)), figureCalled(name)];
  const by = new Map(
    names.flatMap((name) =>
      called(name).map((text) => [comparable(text.slice(CROP.length + 1)), name] as const),
    ),
  );
  endings = { of, system, by };
  return by;
}

/** What is stored for a figure that somebody named in the language spoken; anything else as it was written. */
export function figureMeant(text: string): string {
  if (readFigureName(text).ok) return text;
  const written = comparable(text);
  const other = [FREEZER, HEN].find((name) => comparable(figureCalled(name)) === written);
  if (other) return figureText(other);
  for (let at = text.indexOf(','); at >= 0; at = text.indexOf(',', at + 1)) {
    const found = byEnding().get(comparable(text.slice(at + 1)));
    const of = found && cropKey(text.slice(0, at));
    if (found && of) return figureText({ ...found, of } as FigureName);
  }
  return text;
}
