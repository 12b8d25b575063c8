import { html, type TemplateResult } from 'lit';
import type { PlaceInBook } from '../../src/live/doings/formulas-of-book.js';
import { bookAround } from '../book/find-book.js';
import { showCell } from '../pictures/show.js';

/** Asks that a place of the book be shown. */
export function goTo(from: HTMLElement, { cell }: PlaceInBook): void {
  if (cell) showCell(from, bookAround(from), cell);
}

/** A place as a button that goes there; plain words where there is nothing to go to. */
export const placeLink = (from: HTMLElement, place: PlaceInBook): TemplateResult =>
  place.cell
    ? html`<button class="link" type="button" @click=${() => goTo(from, place)}>${place.words}</button>`
    : html`<span>${place.words}</span>`;

/** Places one after another, with commas. */
export const placeLinks = (from: HTMLElement, places: readonly PlaceInBook[]): unknown[] =>
  places.map((place, i) => html`${i > 0 ? ', ' : ''}${placeLink(from, place)}`);
