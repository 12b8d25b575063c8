/** Several values: as a list, or as text with commas between, which is how attributes have them. */
export type Several = readonly string[] | string | null | undefined;

/**
 * Libraries that find a property of an attribute’s name set that property, with the attribute’s text: what is a
 * list or a number here must take it as it comes.
 */
export const listTold = (told: Several): readonly string[] =>
  typeof told === 'string' ? told.split(',').map((each) => each.trim()) : (told ?? []);

/** A number told as one or as its digits; `unless` where none is told. NaN where it is no number. */
export const numberTold = <T extends number | null>(
  told: number | string | null | undefined,
  unless: T,
): number | T => (told === null || told === undefined || told === '' ? unless : Number(told));

/**
 * A tick as an attribute: it is there, or it is not. `false` counts as not there, since several libraries write
 * that where they find no property of the attribute’s name.
 */
export const tickTold = {
  fromAttribute: (told: string | null): boolean => told !== null && told !== 'false',
  toAttribute: (ticked: boolean): string | null => (ticked ? '' : null),
};
