/** A bare grid of 200 rows, loaded when it is asked for: what an editing view is compared with. */
async function openBare(): Promise<number> {
  const started = performance.now();
  const { mountBare } = await import('./bare-grid.js');
  mountBare(document.querySelector<HTMLElement>('#stand')!);
  await new Promise<void>((done) => {
    const look = (): void =>
      document.querySelector('#stand td') ? done() : void requestAnimationFrame(look);
    look();
  });
  return performance.now() - started;
}

Object.assign(window, { openBare });
