import { html, nothing, type TemplateResult } from 'lit';
import { until } from 'lit/directives/until.js';
import { PICTURES } from './groups.js';
import { phrase, say, spoken } from './said.js';
import { panelId, tabId, tabList } from './tabs.js';

interface Picture {
  readonly id: string;
  readonly title: string;
  readonly load: () => Promise<unknown>;
  readonly view: TemplateResult;
}

const ALL: readonly Picture[] = [
  {
    id: PICTURES,
    title: phrase('How long it lasts'),
    load: () => import('../../components/runway/croft-runway.js'),
    view: html`<croft-runway></croft-runway>`,
  },
  {
    id: `${PICTURES}-season`,
    title: phrase('The growing year'),
    load: () => import('../../components/season/croft-season.js'),
    view: html`<croft-season></croft-season>`,
  },
  {
    id: `${PICTURES}-room`,
    title: phrase('Room'),
    load: () => import('../../components/room/croft-room.js'),
    view: html`<croft-room></croft-room>`,
  },
];

export const isPicture = (tab: string): boolean => ALL.some(({ id }) => id === tab);

const loaded = new Map<Picture, Promise<TemplateResult>>();

/** The element of a picture, once it is there; nothing of it is loaded before. */
function shownWhenLoaded(picture: Picture): Promise<TemplateResult> {
  let view = loaded.get(picture);
  if (!view) {
    view = picture.load().then(
      () => picture.view,
      () => {
        loaded.delete(picture);
        return html`<p class="problem" role="alert">${say`The picture could not be loaded. Check the connection and choose it again.`}        </p>`;
      },
    );
    loaded.set(picture, view);
  }
  return view;
}

/** The pictures of a book, one at a time, with tabs of their own. */
export function picturesView(shown: string, show: (id: string) => void): TemplateResult {
  const picture = ALL.find(({ id }) => id === shown) ?? ALL[0]!;
  const tabs = ALL.map(({ id, title }) => ({ id: `${id}-picture`, title: spoken(title) }));
  return html`<div class="second tabs">
      ${tabList(say`Pictures`, [{ title: '', tabs }], `${picture.id}-picture`, (id) => show(id.replace(/-picture$/, '')))}
    </div>
    ${ALL.map((each) => {
      const id = `${each.id}-picture`;
      return html`<div class="picture" role="tabpanel" id=${panelId(id)} aria-labelledby=${tabId(id)} ?hidden=${each !== picture}>
        ${
          each === picture
            ? until(shownWhenLoaded(each), html`<p aria-busy="true">${say`Drawing…`}</p>`)
            : loaded.has(each)
              ? until(shownWhenLoaded(each), nothing)
              : nothing
        }
      </div>`;
    })}`;
}
