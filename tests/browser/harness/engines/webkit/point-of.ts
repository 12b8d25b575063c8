/**
 * Where and whether an element can be clicked; said in words where it cannot be yet. What is seen is not scrolled;
 * what is out of the window, or of what scrolls around it, is brought into sight.
 */
export const POINT_OF = `async (finder, element, position, force) => {
  if (!force) {
    const states = await finder.checkElementStates(element, ['visible', 'enabled', 'stable'], true);
    if (states) return { not: JSON.stringify(states) };
  }
  const pointNow = () => {
    const box = element.getBoundingClientRect();
    return position
      ? { x: box.left + element.clientLeft + position.x, y: box.top + element.clientTop + position.y }
      : { x: box.left + box.width / 2, y: box.top + box.height / 2 };
  };
  const inView = (box) => box.top >= 0 && box.left >= 0 && box.bottom <= innerHeight && box.right <= innerWidth;
  const bring = (to) => element.scrollIntoView({ block: to, inline: to, behavior: 'instant' });
  if (!inView(element.getBoundingClientRect())) bring('center');
  if (force) return { point: pointNow() };
  let hit;
  for (const to of [null, 'nearest', 'center', 'start', 'end']) {
    if (to) bring(to);
    const point = pointNow();
    hit = finder.expectHitTarget(point, element);
    if (hit === 'done') return { point };
  }
  return { not: 'covered by ' + hit.hitTargetDescription };
}`;
