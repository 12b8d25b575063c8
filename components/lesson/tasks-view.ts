import { html, type TemplateResult } from 'lit';
import type { LessonTask } from '../../src/lessons/index.js';
import { say } from '../../src/words/index.js';
import { styled } from '../look/styled.js';
import type { KeptWork } from './kept-work.js';

/** Formulas to be written, each on its own sheet, numbered on after the questions. */
export const tasksView = (
  tasks: readonly LessonTask[],
  before: number,
  seed: string,
  kept: KeptWork | null,
  checked: (event: CustomEvent<{ readonly task: string; readonly kind: string }>) => void,
): TemplateResult => html`<h3>${say`Write the formula`}</h3>
  <ol class="questions tasks" ${styled({ 'counter-set': `question ${before}` })} part="tasks">
    ${tasks.map(
      ({ task, text = '', rows = [], hints, view = 'table' }) => html`<li class="question">
        <croft-lesson-sheet
          .task=${task}
          .heading=${text}
          .rows=${rows.join(',')}
          .ownHints=${hints}
          .view=${view}
          .seed=${seed}
          .kept=${kept}
          @croft-lesson-checked=${checked}
        ></croft-lesson-sheet>
      </li>`,
    )}
  </ol>`;
