/** Id of the column in which pupils write the formula of a planning column. */
export const columnAsked = (column: string): string => `asked-${column}`;
