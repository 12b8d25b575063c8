import type { DateOrder } from '../planning/parse-date.js';
import { dayComesFirst } from '../words/index.js';
import type { Workbench } from './bench.js';

/**
 * Dates with the year last are meant as the household's measures go, month first with US customary ones; in a
 * language that writes the day first they are meant so.
 */
export const dateOrder = ({ state }: Workbench): DateOrder =>
  state.settings.measures === 'metric' || dayComesFirst() ? 'day first' : 'month first';
