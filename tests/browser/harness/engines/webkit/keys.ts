/** Keys without a character of their own, as WebDriver writes them. */
const NAMED: Readonly<Record<string, string>> = {
  Backspace: '\uE003',
  Tab: '\uE004',
  Enter: '\uE007',
  Shift: '\uE008',
  Control: '\uE009',
  ControlOrMeta: '\uE009',
  Alt: '\uE00A',
  Escape: '\uE00C',
  Space: ' ',
  PageUp: '\uE00E',
  PageDown: '\uE00F',
  End: '\uE010',
  Home: '\uE011',
  ArrowLeft: '\uE012',
  ArrowUp: '\uE013',
  ArrowRight: '\uE014',
  ArrowDown: '\uE015',
  Insert: '\uE016',
  Delete: '\uE017',
  Meta: '\uE03D',
  ...Object.fromEntries([...Array(12)].map((_, i) => [`F${i + 1}`, String.fromCharCode(0xe031 + i)])),
};

export interface KeyAction {
  readonly type: 'keyDown' | 'keyUp' | 'pause';
  readonly value?: string;
  readonly duration?: number;
}

const keyOf = (name: string): string => {
  const value = NAMED[name] ?? ([...name].length === 1 ? name : undefined);
  if (value === undefined) throw new Error(`No key “${name}” is known.`);
  return value;
};

export const held = (names: readonly string[]): KeyAction[] =>
  names.map((name) => ({ type: 'keyDown', value: keyOf(name) }));

export const released = (names: readonly string[]): KeyAction[] =>
  [...names].reverse().map((name) => ({ type: 'keyUp', value: keyOf(name) }));

/** What has to be typed with Shift, on the keyboard that the browser takes it to be. */
const SHIFTED = /^[A-Z~!@#$%^&*()_+{}|:"<>?]$/;

const withShift = (key: string): string[] => (SHIFTED.test(key) ? ['Shift', key] : [key]);

/** One press: `Control+Shift+Z`; a `+` at the end is the key itself. */
export function pressed(chord: string): KeyAction[] {
  const names = chord.endsWith('+') ? [...chord.slice(0, -1).split('+'), '+'] : chord.split('+');
  const given = names.filter(Boolean);
  const keys = given.length === 1 ? withShift(given[0]!) : given;
  return [...held(keys), ...released(keys)];
}

export const typed = (text: string): KeyAction[] =>
  [...text].flatMap((each) => {
    if (each === '\n') return pressed('Enter');
    const keys = withShift(each);
    return [...held(keys), ...released(keys)];
  });
