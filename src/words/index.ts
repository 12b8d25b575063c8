export {
  inEnglish,
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
export { dayOfMoment, timeOfMoment } from './moments.js';
export { dateFormat, dayComesFirst, decimalSign, groupSign, localNumber, numberFormat } from './numbers.js';
export { quoted } from './quoted.js';
export { asWritten, counted, formOf, type Hole, phrase, rewordBy, say, spoken } from './say.js';
