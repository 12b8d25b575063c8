import { type ChoiceSource, fixedChoices, type SheetState } from '../book/index.js';
import { cropNames } from '../facts/index.js';
import { figureShown, knownFigures, SUPPLY_ITEMS } from '../planning/garden/index.js';
import type { Lot } from '../planning/types.js';
import { spoken } from '../words/index.js';
import { foodKey } from './food-key.js';

/** One known value of a cell: what is stored, and how it is shown where that says more. */
export interface Choice {
  readonly value: string;
  readonly label: string;
}

const plain = (values: Iterable<string>): Choice[] => [...values].map((value) => ({ value, label: value }));

/**
 * Words of ours, as they are called in the language spoken. What has one name there for two of ours (`piece` and
 * `each`) is offered once: as `held`, which the cell holds, else as the first, which a person who types it means.
 */
export function called(values: readonly string[], held?: unknown): Choice[] {
  const all = values.map((value) => ({ value, label: spoken(value) }));
  const now = all.find(({ value }) => value === held);
  return all.filter((each, at) =>
    now?.label === each.label ? each === now : all.findIndex(({ label }) => label === each.label) === at,
  );
}

const texts = (sheet: SheetState | undefined, column: string): string[] => {
  const found = new Set<string>();
  for (const id of sheet?.rowOrder.ids ?? []) {
    const raw = sheet!.rows.get(id)!.cells[column];
    if (typeof raw === 'string' && raw !== '' && !raw.startsWith('=')) found.add(raw.trim());
  }
  return [...found].sort((a, b) => a.localeCompare(b));
};

/** Known values for a cell, which holds `held`. `food` narrows lots to the food of a draw. */
export function choicesOf(
  source: ChoiceSource,
  sheets: {
    shelf: SheetState | undefined;
    foods: SheetState | undefined;
    draws: SheetState | undefined;
    beds?: SheetState | undefined;
    dishes?: SheetState | undefined;
  },
  lots: readonly { readonly lot: Lot; readonly label: string }[],
  food: string,
  held?: unknown,
): readonly Choice[] {
  const fixed = fixedChoices(source);
  if (fixed) return called(fixed, held);
  switch (source) {
    case 'crops':
      return called(cropNames());
    case 'dishes':
      return plain(texts(sheets.dishes, 'dish'));
    case 'figures':
      return knownFigures().map((value) => ({ value, label: figureShown(value) }));
    case 'supplies':
      return called(SUPPLY_ITEMS);
    case 'plantings': {
      const { beds } = sheets;
      return (beds?.rowOrder.ids ?? []).map((id) => {
        const { crop, variety, sown_on: sown } = beds!.rows.get(id)!.cells;
        const words = [crop, variety, sown].filter((part) => part !== undefined && part !== '');
        return { value: id, label: words.join(', ') || id };
      });
    }
    case 'places':
      return plain(texts(sheets.shelf, 'place'));
    case 'foods': {
      const listed = texts(sheets.foods, 'food');
      const keys = new Set(listed.map(foodKey));
      const others = texts(sheets.shelf, 'food').filter((name) => !keys.has(foodKey(name)));
      return plain([...listed, ...others]);
    }
    case 'lots':
      return lots
        .filter(({ lot }) => food === '' || lot.food === foodKey(food))
        .map(({ lot, label }) => ({ value: lot.id, label }));
    case 'draws': {
      const { draws } = sheets;
      return (draws?.rowOrder.ids ?? []).slice(-200).map((id) => {
        const { date, food: what, amount } = draws!.rows.get(id)!.cells;
        return {
          value: id,
          label: [date, what, amount].filter((part) => part !== undefined).join(' · ') || id,
        };
      });
    }
    default:
      return [];
  }
}
