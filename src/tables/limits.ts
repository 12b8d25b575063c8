/** Files larger than this are not read: no table that a book could hold is. */
export const MOST_BYTES = 64 * 1024 * 1024;

/** The most that a workbook may unpack to. */
export const MOST_UNPACKED = 256 * 1024 * 1024;

/** Files inside a workbook. */
export const MOST_PARTS = 5_000;

/** As a cell of the book holds it. */
export const MAX_TEXT = 20_000;

/** As a title of the book holds it. */
export const MAX_TITLE = 200;

/** Problems that are kept with their place; of the rest only how many there are. */
export const MOST_LISTED = 1_000;

/** Rows brought into the book at one time, so that the page stays awake and the person can stop. */
export const ROWS_AT_ONCE = 2_500;
