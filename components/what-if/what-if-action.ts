import { html } from 'lit';
import { phrase } from '../../src/words/index.js';
import { icons } from '../look/icons.js';
import type { SheetAction } from '../sheet/actions/action.js';

/** Offered on sheets whose values one would try otherwise. */
export const whatIf: SheetAction = {
  label: phrase('What if…'),
  title: phrase('Try other values on a copy, and see which figures would change'),
  icon: icons.whatIf,
  act: ({ sheet, row, show }) =>
    show(async () => {
      await import('./what-if-dialog.js');
      return html`<croft-what-if-dialog .sheet=${sheet} .row=${row}></croft-what-if-dialog>`;
    }),
};
