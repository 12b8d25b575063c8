import { standardFunctions } from '../formulas/standard.js';

/** Standard functions beyond those offered while typing; the formula engine and ECMA-376 both have them. */
const MORE =
  'PI SIGN TRUNC EXACT FIND SEARCH REPLACE ROWS COLUMNS COLUMN LN LOG LOG10 EXP EVEN ODD GCD LCM QUOTIENT ' +
  'ISTEXT ISNA ISERR PROPER REPT CHAR CODE HLOOKUP VAR MAXIFS MINIFS TRUE FALSE NA COUNTUNIQUE';

/** Younger than the first edition of ECMA-376: a workbook writes them with a prefix. */
const YOUNGER: ReadonlySet<string> = new Set(
  'IFS SWITCH XLOOKUP TEXTJOIN DAYS ISOWEEKNUM MAXIFS MINIFS'.split(' '),
);

const BOTH: ReadonlySet<string> = new Set(
  [...standardFunctions.map(({ name }) => name), ...MORE.split(' ')].filter((name) => name !== 'COUNTUNIQUE'),
);

const plainName = (name: string): string => name.replace(/^_xlfn\.(?:_xlws\.)?/i, '').toUpperCase();

/** A function's name as the book writes it; undefined where the book has none that means the same. */
export const functionIn = (name: string): string | undefined => {
  const plain = plainName(name);
  return BOTH.has(plain) ? plain : undefined;
};

/** A function's name as a workbook writes it; undefined where workbooks have none that means the same. */
export const functionOut = (name: string): string | undefined => {
  const plain = name.toUpperCase();
  if (!BOTH.has(plain)) return undefined;
  return YOUNGER.has(plain) ? `_xlfn.${plain}` : plain;
};
