/** A decimal number: `digits` × 10 to the power of `−places`. */
interface Decimal {
  readonly digits: bigint;
  readonly places: number;
}

/** The number as it is written, so that 0.1 is a tenth. */
function decimalOf(value: number): Decimal {
  const [, sign = '', whole = '0', part = '', power = '0'] =
    /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]?\d+))?$/.exec(String(value)) ?? [];
  const places = part.length - Number(power);
  const digits = BigInt(`${sign}${whole}${part}`);
  return places < 0 ? { digits: digits * 10n ** BigInt(-places), places: 0 } : { digits, places };
}

function add(values: readonly number[]): Decimal {
  const all = values.map(decimalOf);
  const places = all.reduce((most, each) => Math.max(most, each.places), 0);
  const digits = all.reduce((sum, each) => sum + each.digits * 10n ** BigInt(places - each.places), 0n);
  return { digits, places };
}

const asNumber = ({ digits, places }: Decimal): number => Number(`${digits}e-${places}`);

/** The sum as one would work it out on paper: 0.1 and 0.2 are 0.3. Values are finite. */
export const exactSum = (values: readonly number[]): number => asNumber(add(values));

/** Digits beyond those that a number holds, so that rounding happens once. */
const GUARD = 25;

/** The mean of at least one value. */
export function exactMean(values: readonly number[]): number {
  const { digits, places } = add(values);
  return asNumber({
    digits: (digits * 10n ** BigInt(GUARD)) / BigInt(values.length),
    places: places + GUARD,
  });
}
