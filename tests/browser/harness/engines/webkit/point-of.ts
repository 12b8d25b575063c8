/**
 * Where and whether an element can be clicked; said in words where it cannot be yet. What is seen is not scrolled;
 * what is out of the window, or of what scrolls around it, is brought into sight. Where the middle is covered, as
 * by the bar that scrolls a table sideways, which GTK lays over the last line, a person presses further up. Until
 * `HIT` is asked, what is pressed hears of it only where it is still the element meant: pages move under a mouse.
 */
export const POINT_OF = `async (finder, element, position, force) => {
  if (!force) {
    const states = await finder.checkElementStates(element, ['visible', 'enabled', 'stable'], true);
    if (states) return { not: JSON.stringify(states) };
  }
  const pointNow = (down = 1 / 2) => {
    const box = element.getBoundingClientRect();
    return position
      ? { x: box.left + element.clientLeft + position.x, y: box.top + element.clientTop + position.y }
      : { x: box.left + box.width / 2, y: box.top + box.height * down };
  };
  const inView = (box) => box.top >= 0 && box.left >= 0 && box.bottom <= innerHeight && box.right <= innerWidth;
  const bring = (to) => element.scrollIntoView({ block: to, inline: to, behavior: 'instant' });
  if (!inView(element.getBoundingClientRect())) bring('center');
  finder.pressed = null;
  if (force) return { point: pointNow() };
  const found = (point) => {
    finder.pressed = finder.setupHitTargetInterceptor(element, 'mouse', point, false);
    return { point };
  };
  let hit;
  for (const to of [null, 'nearest', 'center', 'start', 'end']) {
    if (to) bring(to);
    const point = pointNow();
    hit = finder.expectHitTarget(point, element);
    if (hit === 'done') return found(point);
  }
  const above = pointNow(1 / 5);
  if (finder.expectHitTarget(above, element) === 'done') return found(above);
  return { not: 'covered by ' + hit.hitTargetDescription };
}`;

/** What was hit by a press where `POINT_OF` said: `done`, or in words what else it was. */
export const HIT = `(finder) => {
  const is = finder.pressed && finder.pressed.stop ? finder.pressed.stop() : 'done';
  finder.pressed = null;
  return is === 'done' ? is : 'covered by ' + is.hitTargetDescription;
}`;
