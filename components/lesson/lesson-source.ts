import type { Lesson } from '../../src/lessons/index.js';
import type { Problem } from '../../src/problem.js';
import { loadLesson } from './load-lesson.js';

/** The lesson that an element is about: read from its attribute, its address, or a script inside the element. */
export class LessonSource {
  lesson: Lesson | null = null;
  /** Why it could not be read. */
  problems: readonly Problem[] = [];
  #loading = '';

  get isLoading(): boolean {
    return this.#loading !== '';
  }

  /** `done` is called once it is read, or could not be, unless another was asked for meanwhile. */
  load(host: Element, attribute: string, done: () => void): void {
    const inside = host.querySelector(':scope > script[type="application/json"]')?.textContent ?? '';
    const text = attribute || inside;
    this.#loading = text;
    if (text === '') {
      this.lesson = null;
      this.problems = [];
      return;
    }
    void loadLesson(text, document.baseURI).then((read) => {
      if (this.#loading !== text) return;
      this.#loading = '';
      this.problems = read.ok ? [] : read.problems;
      this.lesson = read.ok ? read.lesson : null;
      done();
    });
  }
}
