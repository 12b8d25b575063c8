import type { DateOrder } from '../planning/parse-date.js';
import type { Workbench } from './bench.js';

/** Dates with the year last are meant as the household's measures go: month first with US customary ones. */
export const dateOrder = ({ state }: Workbench): DateOrder =>
  state.settings.measures === 'metric' ? 'day first' : 'month first';
