export { type Embed, type EmbedFile, type EmbedOptions, embedOf } from './embed-of.js';
export {
  canOpen,
  cautionTexts,
  type EmbedCell,
  type EmbedColumn,
  embedCell,
  type ShownTable,
  shownTable,
  type TableOptions,
} from './shown-table.js';
export { toPaste } from './snippet.js';
