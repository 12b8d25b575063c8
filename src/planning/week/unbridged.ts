import type { Problem } from '../../problem.js';
import { andList, orList } from '../../units/index.js';
import { say } from '../../words/index.js';
import { measureName } from '../measure.js';
import type { ShelfCopy } from './shelf-copy.js';
import type { DishLine } from './types.js';

/**
 * Why a food that stands on the shelf cannot be taken in a measure: all its containers, and the measures that
 * would do. Null when one of them meets it, or nothing stands there.
 */
export function unbridged(
  shelf: ShelfCopy,
  { food, foodName, way }: Pick<DishLine, 'foodName' | 'way'> & { readonly food: string },
  measure: string,
): Problem | null {
  const measures = shelf.measures(food);
  let code: string | null = null;
  const containers = new Set<string>();
  for (const lot of shelf.of(food, way)) {
    if (shelf.left(lot.id) <= 0) continue;
    const factor = measures.factor(measure, lot.container);
    if (factor.ok) return null;
    code ??= factor.problem.code;
    containers.add(lot.container);
  }
  if (code === null) return null;
  const names = [...containers].map((id) => measureName(id));
  const weight = code === 'density-missing' ? say` What they weigh is not known.` : '';
  return {
    code,
    message: say`${foodName.slice(0, 60)} stands on the shelf in ${andList(names)}, which cannot be turned into ${measureName(measure)}.${weight}`,
    mend: say`Write the amount in ${orList(names)}.`,
  };
}
