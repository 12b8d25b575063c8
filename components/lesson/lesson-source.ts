import { type Lesson, lessonInWords } from '../../src/lessons/index.js';
import type { Problem } from '../../src/problem.js';
import { spokenTag } from '../../src/words/index.js';
import { loadLesson } from './load-lesson.js';

/** The lesson that an element is about: read from its attribute, its address, or a script inside the element. */
export class LessonSource {
  #lesson: Lesson | null = null;
  #said: { readonly tag: string; readonly lesson: Lesson } | null = null;
  /** Why it could not be read. */
  problems: readonly Problem[] = [];
  #loading = '';

  /** In the language spoken now. */
  get lesson(): Lesson | null {
    const tag = spokenTag();
    if (this.#lesson && this.#said?.tag !== tag) this.#said = { tag, lesson: lessonInWords(this.#lesson) };
    return this.#lesson && (this.#said?.lesson ?? null);
  }

  #take(lesson: Lesson | null): void {
    this.#lesson = lesson;
    this.#said = null;
  }

  get isLoading(): boolean {
    return this.#loading !== '';
  }

  /** `done` is called once it is read, or could not be, unless another was asked for meanwhile. */
  load(host: Element, attribute: string, done: () => void): void {
    const inside = host.querySelector(':scope > script[type="application/json"]')?.textContent ?? '';
    const text = attribute || inside;
    this.#loading = text;
    if (text === '') {
      this.#take(null);
      this.problems = [];
      return;
    }
    void loadLesson(text, document.baseURI).then((read) => {
      if (this.#loading !== text) return;
      this.#loading = '';
      this.problems = read.ok ? [] : read.problems;
      this.#take(read.ok ? read.lesson : null);
      done();
    });
  }
}
