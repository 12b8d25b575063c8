import { mapReferences } from '../../book/formula/stored.js';

/** A stored formula in which whatever names its own sheet says it without the sheet, as what stands beside it. */
export const pointingHome = (stored: string, home: string): string =>
  mapReferences(stored, (reference) =>
    reference.sheet === home ? { ...reference, sheet: undefined } : reference,
  );
