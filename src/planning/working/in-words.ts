import { spoken } from '../../words/index.js';
import type { PlanValue, Working, WorkingInput } from '../types.js';
import { unitTold } from '../unit-told.js';
import { short } from './changes.js';

const valueInWords = (value: PlanValue): PlanValue => (typeof value === 'string' ? spoken(value) : value);

/** What explains an input stands behind its name, and is told already. */
function nameInWords(name: string): string {
  const said = spoken(name);
  if (said !== name) return said;
  const head = short(name);
  return name.startsWith(head) ? spoken(head) + name.slice(head.length) : name;
}

const inputInWords = (given: WorkingInput): WorkingInput => ({
  ...given,
  name: nameInWords(given.name),
  value: valueInWords(given.value),
  unit: unitTold(given.unit),
  ...(given.source !== undefined && { source: spoken(given.source) }),
});

/**
 * A working in the language spoken now. Planners find and compare what they name in English; this is done last,
 * to what a person reads.
 */
export function workingInWords(working: Working): Working {
  const { rule, missing, changes, cautions } = working;
  return {
    ...working,
    title: spoken(working.title),
    value: valueInWords(working.value),
    unit: unitTold(working.unit),
    rule: spoken(rule),
    inputs: working.inputs.map(inputInWords),
    steps: working.steps.map((step) => ({ ...step, text: spoken(step.text) })),
    ...(missing !== undefined && { missing: spoken(missing) }),
    ...(changes && { changes: changes.map(spoken) }),
    ...(cautions && { cautions: cautions.map(spoken) }),
  };
}
