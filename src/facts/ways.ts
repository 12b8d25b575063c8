/** The ways of keeping food that the facts know quality periods for, or say that none is published. */
export const WAYS = [
  'canned',
  'frozen',
  'dried',
  'freeze-dried',
  'fermented',
  'cellared',
  'cured',
  'dry goods',
  'rendered',
  'fresh',
] as const;
export type Way = (typeof WAYS)[number];
