export {
  isSpoken,
  LANGUAGES,
  type Messages,
  messages,
  onLanguage,
  speak,
  speakWith,
  spokenTag,
  type Translation,
} from './language.js';
export { dateFormat, decimalSign, groupSign, localNumber, numberFormat } from './numbers.js';
export { counted, type Hole, phrase, rewordBy, say, spoken } from './say.js';
