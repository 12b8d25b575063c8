import type { Topic } from '../types.js';
import { AREA_TOPIC } from './area.js';
import { AVERAGES_TOPIC } from './averages.js';
import { BUSHEL_TOPIC } from './bushel.js';
import { CHANCE_TOPIC } from './chance.js';
import { CHARTS_TOPIC } from './charts.js';
import { DATES_TOPIC } from './dates.js';
import { LINEAR_TOPIC } from './linear.js';
import { PERCENT_TOPIC } from './percent.js';
import { RATES_TOPIC } from './rates.js';
import { RATIO_TOPIC } from './ratio.js';
import { UNITS_TOPIC } from './units.js';

/** Every topic, easier ones first. A new one is a file of its own, listed here. */
export const TOPICS: readonly Topic[] = [
  UNITS_TOPIC,
  DATES_TOPIC,
  CHARTS_TOPIC,
  AREA_TOPIC,
  BUSHEL_TOPIC,
  RATES_TOPIC,
  RATIO_TOPIC,
  PERCENT_TOPIC,
  AVERAGES_TOPIC,
  CHANCE_TOPIC,
  LINEAR_TOPIC,
];

export const topicWithId = (id: string): Topic | undefined => TOPICS.find((topic) => topic.id === id);
