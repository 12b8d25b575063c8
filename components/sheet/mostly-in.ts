/** What each way of keeping is mostly counted in: offered when a way is chosen, to be changed. */
export const MOSTLY_IN: Readonly<Record<string, string>> = {
  canned: 'quart jar',
  fermented: 'quart jar',
  frozen: 'quart freezer bag',
  cellared: 'pound',
  cured: 'pound',
  'dry goods': 'pound',
};
