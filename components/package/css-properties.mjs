/**
 * What each custom property means that every element heeds; a page sets it on an element of ours or above it.
 * What it is unless given stands in `components/look/token-text.ts`; a test holds the two together. A property
 * of one element only is named in that element's doc block.
 */
export const CSS_PROPERTIES = {
  '--croft-paper': 'Ground of everything.',
  '--croft-raised': 'Ground of what lies on the paper: buttons, fields, heads of tables.',
  '--croft-ink': 'Colour of words and figures.',
  '--croft-quiet-ink': 'Colour of words that stand back.',
  '--croft-line': 'Colour of lines and frames.',
  '--croft-accent': 'Colour of links, of what is chosen and of the bar above a sheet.',
  '--croft-on-accent': 'Colour of words on the accent.',
  '--croft-planning': 'Ground of planning columns.',
  '--croft-planning-line': 'Colour of the mark above planning columns.',
  '--croft-own-mark': 'Colour of the mark above own columns.',
  '--croft-problem': 'Colour of what is wrong, short or to be taken care of.',
  '--croft-problem-paper': 'Ground of such words.',
  '--croft-focus': 'Colour of the ring around what has the keyboard.',
  '--croft-font': 'Font of words.',
  '--croft-font-title': 'Font of titles.',
  '--croft-font-figures': 'Font of figures.',
  '--croft-radius': 'Rounding of corners.',
  '--croft-sheet-height': 'Greatest height of a sheet before it scrolls.',
};
