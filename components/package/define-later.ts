/** Stands in for `components/embed/define.ts` where the class of the embedded sheet is exported undefined. */
export { PageElement, VERSION } from '../embed/define.js';
export { offerElement as defineOnce } from './definitions.js';
