import '../../../../components/book/croft-book.js';
import '../../../../components/runway/croft-runway.js';
import '../../../../components/season/croft-season.js';
import type { CroftBook } from '../../../../components/book/croft-book.js';
import type { SelectedCell } from '../../../../components/book/events.js';
import type { Planting } from '../../../../components/season/season-model.js';

declare global {
  interface Window {
    /** Cells that the pictures asked to be shown. */
    shown: SelectedCell[];
    book: CroftBook;
    /** Begins anew as an address that ends like this does. */
    start(search: string): void;
  }
}

/** Invented plantings, by column: crop, variety, how, start, set out, sown, harvest and put up, from and to. */
const plantings = (query: URLSearchParams): Planting[] =>
  [
    ['Garlic', 'hardneck', 'set', '', '', '2025-10-10', '2026-07-20', '2026-08-05', '', ''],
    [
      'Onion',
      'storage',
      'indoors',
      '2026-02-22',
      '2026-04-26',
      '2026-02-12',
      '2026-08-20',
      '2026-09-10',
      '',
      '',
    ],
    [
      'Pea',
      'shelling',
      'direct',
      '2026-04-12',
      '',
      '',
      '2026-06-20',
      '2026-07-12',
      '2026-06-20',
      '2026-07-12',
    ],
    [
      'Tomato',
      'paste',
      'indoors',
      '2026-04-05',
      '2026-05-31',
      '',
      '2026-08-12',
      '2026-09-18',
      '2026-08-20',
      '2026-09-25',
    ],
    [
      'Green bean',
      'bush',
      'direct',
      '2026-05-31',
      '',
      '',
      '2026-07-28',
      '2026-09-10',
      '2026-07-28',
      '2026-09-10',
    ],
    ['Green bean', 'second sowing', 'direct', '2026-07-05', '', '', '2026-08-30', '2026-09-18', '', ''],
    [
      'Cabbage',
      'late',
      'indoors',
      '2026-02-01',
      '2026-06-01',
      '',
      '2026-09-20',
      '2026-10-25',
      '2026-10-01',
      '2026-10-25',
    ],
    [
      'Lettuce',
      'under cover',
      'winter-sown',
      '2026-01-20',
      '2026-04-20',
      '2026-01-20',
      '2026-05-25',
      '2026-06-30',
      '',
      '',
    ],
    ['Parsnip', '', 'direct', '2026-04-26', '', '', '2027-03-25', '2027-05-05', '', ''],
    ['Apple', 'keeping', 'tree', '', '', '', '2026-09-10', '2026-10-20', '2026-09-20', '2026-10-20'],
    ['Melon', 'reversed', 'indoors', '2026-05-01', '2026-06-10', '', '2026-10-20', '2026-09-01', '', ''],
    ['Quince', 'nothing known', '', '', '', '', '', '', '', ''],
  ].map(
    (
      [crop = '', variety = '', how, startOn, setOutOn, sownOn, harvestFrom, harvestTo, putUpFrom, putUpTo],
      i,
    ) => ({
      crop,
      variety,
      how: how || null,
      startOn: startOn || null,
      setOutOn: setOutOn || null,
      sownOn: sownOn || null,
      harvestFrom: harvestFrom || null,
      harvestTo: harvestTo || null,
      putUpFrom: putUpFrom || null,
      putUpTo: putUpTo || null,
      cell: query.has('loose') ? null : { sheet: 'beds', row: `bed${i}` },
    }),
  );

/** `?book=school-garden` names the demo's book; `?show=runway` leaves the other picture out. */
window.start = (search) => {
  const query = new URLSearchParams(search);
  const wanted = query.get('show');
  const element = (name: string): string =>
    wanted === null || wanted === name ? `<croft-${name}></croft-${name}>` : '';
  const given = query.get('book');
  const src = given === 'none' ? '' : `src="/demo/data/${given ?? 'tamarack-bench'}.json"`;
  window.shown = [];
  document.querySelector('main')!.innerHTML =
    `<croft-book ${src}><h1>A book in pictures</h1>${element('runway')}${element('season')}</croft-book>`;
  window.book = document.querySelector('croft-book')!;
  const season = document.querySelector('croft-season');
  if (season && query.has('plantings')) season.plantings = plantings(query);
};

document.addEventListener('croft-show', (event) =>
  window.shown.push((event as CustomEvent<SelectedCell>).detail),
);
window.start(location.search);
