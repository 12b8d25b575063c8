import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';

/** Loads the formula engine and gives it to the book; answers what stands in the way, if anything does. */
export async function giveEngine(
  live: LiveBook,
  licenceKey: string,
  stillOpen: () => boolean,
): Promise<Problem | undefined> {
  try {
    const { HyperFormulaEngine } = await import('../../src/engine/hyperformula-engine.js');
    if (!stillOpen()) return undefined;
    const { asOf, basis } = live.household;
    live.attachEngine(new HyperFormulaEngine({ asOf, basis }, licenceKey));
    return undefined;
  } catch {
    return {
      code: 'engine-not-loaded',
      message: 'Formulas could not be loaded, so cells with formulas stay blank.',
      mend: 'Check the connection, then load the page again. Everything else works.',
    };
  }
}

/** Whether changes bring a formula into a book: asked instead of looking through all of its cells each time. */
export const bringsFormula = ({ changes }: BookChange): boolean => changes.some(({ to }) => holdsFormula(to));

function holdsFormula(value: unknown): boolean {
  if (typeof value === 'string') return value.startsWith('=');
  return typeof value === 'object' && value !== null && Object.values(value).some(holdsFormula);
}
