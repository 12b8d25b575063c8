import { fromIsoDay } from '../../planning/dates.js';
import { ok, type Result } from '../../problem.js';
import type { FunctionValue } from '../declare.js';

/** A planner's ISO day as a date that can be reckoned with; its words ('no use') as they are. */
export function dayOrWords(answer: Result<string>): Result<FunctionValue> {
  if (!answer.ok) return answer;
  const day = fromIsoDay(answer.value);
  return ok(day.ok ? { day: day.value } : answer.value);
}
