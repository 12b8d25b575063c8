/**
 * Empty, as a hole beside a word that is said elsewhere in another sense: say`From${HERE}` where a day begins a
 * span. English says the same; another language has a text of its own for it.
 */
export const HERE = '';
