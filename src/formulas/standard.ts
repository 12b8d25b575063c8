import { phrase } from '../words/index.js';

/** A function of the OpenFormula standard that people know from other spreadsheets. */
export interface StandardFunction {
  readonly name: string;
  readonly signature: string;
  /** What it gives, in one line. */
  readonly summary: string;
}

const of = (signature: string, summary: string): StandardFunction => ({
  name: signature.slice(0, signature.indexOf('(')),
  signature,
  summary,
});

/** The standard functions offered while typing; the engine has many more. */
export const standardFunctions: readonly StandardFunction[] = [
  of('SUM(numbers, [more])', phrase('All the numbers added up.')),
  of('AVERAGE(numbers, [more])', phrase('The numbers added up and divided by how many there are.')),
  of('COUNT(values, [more])', phrase('How many of the cells hold a number.')),
  of('COUNTA(values, [more])', phrase('How many of the cells hold anything.')),
  of('COUNTBLANK(range)', phrase('How many of the cells are blank.')),
  of('MIN(numbers, [more])', phrase('The least of the numbers.')),
  of('MAX(numbers, [more])', phrase('The greatest of the numbers.')),
  of('MEDIAN(numbers, [more])', phrase('The number in the middle, when they stand in order.')),
  of('SUMIF(range, criterion, [sum_range])', phrase('Adds up the cells that meet a condition.')),
  of(
    'SUMIFS(sum_range, range, criterion, [more])',
    phrase('Adds up the cells that meet several conditions.'),
  ),
  of('COUNTIF(range, criterion)', phrase('How many cells meet a condition.')),
  of('COUNTIFS(range, criterion, [more])', phrase('How many rows meet several conditions.')),
  of(
    'AVERAGEIF(range, criterion, [average_range])',
    phrase('The average of the cells that meet a condition.'),
  ),
  of('SUMPRODUCT(range, [more])', phrase('Multiplies ranges cell by cell and adds up the products.')),
  of('PRODUCT(numbers, [more])', phrase('All the numbers multiplied.')),
  of('LARGE(range, place)', phrase('The greatest number, the second greatest, and so on.')),
  of('SMALL(range, place)', phrase('The least number, the second least, and so on.')),
  of('STDEV(numbers, [more])', phrase('How far the numbers scatter about their average.')),
  of('PERCENTILE(range, share)', phrase('The number below which that share of the numbers lies.')),
  of(
    'IF(condition, then, [otherwise])',
    phrase('One value where a condition holds, another where it does not.'),
  ),
  of('IFS(condition, then, [more])', phrase('The value beside the first condition that holds.')),
  of('IFERROR(value, otherwise)', phrase('The value, or another where it is an error.')),
  of('AND(conditions, [more])', phrase('TRUE where every condition holds.')),
  of('OR(conditions, [more])', phrase('TRUE where any condition holds.')),
  of('NOT(condition)', phrase('TRUE where the condition does not hold.')),
  of('SWITCH(value, case, result, [more])', phrase('The result beside the case that the value equals.')),
  of('CHOOSE(place, values, [more])', phrase('The value at that place of a list.')),
  of('ISBLANK(cell)', phrase('TRUE where the cell is blank.')),
  of('ISNUMBER(value)', phrase('TRUE where the value is a number.')),
  of('ISERROR(value)', phrase('TRUE where the value is an error.')),
  of('ROUND(number, [digits])', phrase('The number rounded, to so many decimals.')),
  of('ROUNDUP(number, [digits])', phrase('The number rounded away from zero: jars and plants.')),
  of('ROUNDDOWN(number, [digits])', phrase('The number rounded toward zero.')),
  of('CEILING(number, step)', phrase('The number rounded up to a multiple of the step.')),
  of('FLOOR(number, step)', phrase('The number rounded down to a multiple of the step.')),
  of('INT(number)', phrase('The whole number at or below.')),
  of('MOD(number, divisor)', phrase('What is left over after dividing.')),
  of('ABS(number)', phrase('The number without its sign.')),
  of('POWER(number, exponent)', phrase('The number raised to a power.')),
  of('SQRT(number)', phrase('The square root.')),
  of('TODAY()', phrase("Today's date. AS_OF dates of a book do not move with it.")),
  of('DATE(year, month, day)', phrase('The date of a year, a month and a day.')),
  of('YEAR(date)', phrase('The year of a date.')),
  of('MONTH(date)', phrase('The month of a date, 1 to 12.')),
  of('DAY(date)', phrase('The day of the month, 1 to 31.')),
  of('DAYS(end, start)', phrase('Days from one date to another; the later one comes first.')),
  of('EDATE(date, months)', phrase('The date so many months later.')),
  of('EOMONTH(date, months)', phrase('The last day of the month so many months later.')),
  of('WEEKDAY(date, [type])', phrase('The day of the week as a number.')),
  of('ISOWEEKNUM(date)', phrase('The number of the week in the year, by ISO 8601.')),
  of('DATEDIF(start, end, unit)', phrase('Days "D", whole months "M" or whole years "Y" between two dates.')),
  of('INDEX(range, row, [column])', phrase('The cell at a row and a column of a range.')),
  of('MATCH(value, range, [type])', phrase('The place of a value in a range; type 0 finds it exactly.')),
  of(
    'VLOOKUP(value, range, column, [sorted])',
    phrase('Looks down the first column and answers from another.'),
  ),
  of(
    'XLOOKUP(value, look_in, answer_from, [otherwise])',
    phrase('Finds a value in one range and answers from another.'),
  ),
  of('ROW([cell])', phrase('The number of the row.')),
  of('CONCATENATE(texts, [more])', phrase('Texts put together.')),
  of(
    'TEXTJOIN(between, skip_blanks, texts, [more])',
    phrase('Texts put together with something between them.'),
  ),
  of('TEXT(value, format)', phrase('A number or date written in a format, as in "0.0".')),
  of('VALUE(text)', phrase('The number that a text says.')),
  of('LEN(text)', phrase('How many characters a text has.')),
  of('LEFT(text, [count])', phrase('The first characters of a text.')),
  of('RIGHT(text, [count])', phrase('The last characters of a text.')),
  of('MID(text, start, count)', phrase('Characters from the middle of a text.')),
  of('LOWER(text)', phrase('The text in small letters.')),
  of('UPPER(text)', phrase('The text in capitals.')),
  of('TRIM(text)', phrase('The text without spaces to spare.')),
  of('SUBSTITUTE(text, old, new)', phrase('The text with one piece put in place of another.')),
];
