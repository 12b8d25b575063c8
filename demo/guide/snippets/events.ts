import 'croftsheet/croft-book';

const book = document.querySelector<HTMLElementTagNameMap['croft-book']>('croft-book#kitchen');
const told = document.querySelector('#told');

book?.addEventListener('croft-change', ({ detail }) => {
  const { label, cells } = detail;
  if (told) told.textContent = `${label}: ${cells.length} cells show something else.`;
});

document.querySelector('#take-two')?.addEventListener('click', () => {
  const done = book?.live?.insertRows('draws', [
    { date: '2026-02-15', food: 'tomatoes', way: 'canned', amount: 2, purpose: 'dish' },
  ]);
  if (done && !done.ok && told) told.textContent = `${done.problem.message} ${done.problem.mend}`;
});
