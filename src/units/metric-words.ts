/** Texts whose arithmetic is another in metric measures. */
const WHOLE: Readonly<Record<string, string>> = {
  'Plants (planned, else wanted) × inches between them ÷ 12.':
    'Plants (planned, else wanted) × centimetres between them ÷ 100.',
  'Plants (planned, else wanted) × inches each way ÷ 144: at the close spacing of a bed where one is published, else by rows.':
    'Plants (planned, else wanted) × centimetres each way ÷ 10,000: at the close spacing of a bed where one is published, else by rows.',
  'Whole loads of the canner, of 7 quarts or 9 pints unless yours holds another number.':
    'Whole loads of the canner, of 7 quart jars or 9 pint jars unless yours holds another number.',
  'Jars that your canner holds. Blank: 7 quarts or 9 pints.':
    'Jars that your canner holds. Blank: 7 quart jars or 9 pint jars.',
  'Room on the shelves, less what stands there, less the batches up to this one by date. Jars are counted as quarts {0}':
    'Room on the shelves, less what stands there, less the batches up to this one by date. Jars are counted as quart jars {0}',
  'by what the jars hold: a pint counts as half a quart, a half-gallon as two. Small jars take rather more shelf than that.':
    'by what the jars hold: a pint jar counts as half a quart jar, a half-gallon jar as two. Small jars take rather more shelf than that.',
  'a pint weighs about a pound: common practice, no source':
    'a pint weighs about half a kilogram: common practice, no source',
  'Food kept at 0 °F stays frozen in safety past these months, but its quality falls.':
    'Food kept at −18 °C stays frozen in safety past these months, but its quality falls.',
  'Freeze no more than 2 lb of food to a cubic foot of freezer a day.':
    'Freeze no more than 3 kg of food to 100 litres of freezer a day.',
  'the printed load of {0} ÷ 9 pints': 'the printed load of {0} ÷ 9 pint jars',
  'Feet above the sea: canner pressure depends on it.':
    'Metres above the sea: canner pressure depends on it.',
};

/** Texts that name the measures themselves, or what is printed in them. */
const AS_THEY_ARE: ReadonlySet<string> = new Set([
  'bushel weight',
  'Give pounds: POUNDS_PER_JAR says how many go into a jar, BUSHEL_POUNDS how many a bushel weighs.',
  'Quarts and pounds, or litres and kilograms.',
  'The yield of {0} is published shelled or dry, and a bushel is weighed as it comes from the field.',
  'Give pounds.',
  'by the printed pounds a pint',
  'no bushel weight is published here for {0}.',
  'no bushel weight is published here for {0}; it is sold by the {1}.',
  'Weigh a bushel and enter your own figure.',
  'Enter your own pounds to a pint.',
  'ends as for quarts',
  'worked out: half of the figure for quarts',
]);

/** What is said in place of a customary measure, the longer ones first. Jars and bags keep their names. */
const INSTEAD: readonly (readonly [RegExp, string])[] = [
  [/\bRow feet\b/g, 'Metres of row'],
  [/\brow feet\b/g, 'metres of row'],
  [/\bcubic feet\b/g, 'litres'],
  [/\bCubic feet\b/g, 'Litres'],
  [/\bcubic foot\b/g, 'litre'],
  [/\bsquare feet\b/g, 'square metres'],
  [/\bSquare feet\b/g, 'Square metres'],
  [/\bfeet\b/g, 'metres'],
  [/\bFeet\b/g, 'Metres'],
  [/\bfoot\b/g, 'metre'],
  [/\binches\b/g, 'centimetres'],
  [/\bInches\b/g, 'Centimetres'],
  [/\bpounds\b/g, 'kilograms'],
  [/\bPounds\b/g, 'Kilograms'],
  [/\bpound\b(?!s)/g, 'kilogram'],
  [/\blb\b/g, 'kg'],
  [/\bbushels\b/g, 'litres'],
  [/\bBushels\b/g, 'Litres'],
  [/\bbushel\b/g, 'litre'],
  [/(?<!\d )\bquarts\b/g, 'litres'],
  [/\bQuarts\b/g, 'Litres'],
  [/\bcups\b/g, 'millilitres'],
  [/\bCups\b/g, 'Millilitres'],
  [/\bhalf a cup\b/g, '118 millilitres'],
];

/** A number that stands before a customary measure belongs to it: the one is not said otherwise without the other. */
const COUNTS =
  /[\d}½¼¾⅓⅔] (?:lb|pounds?|ft|feet|foot|in(?= [÷×=])|inch|inches|square feet|cubic feet|bushels?|quarts(?! jar)|cups?)\b/;

/** What somebody wrote, or would write, stands as it is: names of figures are the same in any measures. */
const QUOTED = /“[^”]*”|"[^"]*"/g;

/** An English text of ours as it is said where measures are metric. */
export function metricWords(text: string): string {
  const whole = WHOLE[text];
  if (whole !== undefined) return whole;
  if (COUNTS.test(text) || AS_THEY_ARE.has(text)) return text;
  let at = 0;
  let said = '';
  for (const quoted of text.matchAll(QUOTED)) {
    said += reworded(text.slice(at, quoted.index)) + quoted[0];
    at = quoted.index + quoted[0].length;
  }
  return said + reworded(text.slice(at));
}

const reworded = (text: string): string =>
  INSTEAD.reduce((said, [customary, metric]) => said.replace(customary, metric), text);
