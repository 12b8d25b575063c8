import { messages, say, spoken } from '../words/index.js';

/** A unit in the language spoken now: what the catalogue does not have whole is put together from its parts. */
export function unitTold(unit: string): string {
  const whole = spoken(unit);
  if (whole !== unit || messages() === null) return whole;
  const [first = '', ...per] = unit.split(/ (?=an? )/);
  if (per.length === 0) return unit.split(' × ').map(spoken).join(' × ');
  return per.reduce((text, part) => say`${text} a ${part.replace(/^an? /, '')}`, unitTold(first));
}
