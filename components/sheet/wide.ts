/** Width in rem from which the working stands beside a sheet; as in the styles. */
const WIDE = 64;

/** True where the working takes no room from the sheet. */
export function isWide(element: Element): boolean {
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || 16;
  return element.clientWidth >= WIDE * rem;
}
