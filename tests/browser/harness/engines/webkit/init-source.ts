/**
 * What pages run before their own scripts, as one. No server is asked for a blank frame, so that one runs it when
 * the page around it first reaches into it.
 */
export const initSource = (scripts: readonly string[]): string => {
  const all = scripts.map((each) => `{${each}\n}`).join('\n');
  return `${all}
  {
    const { prototype } = HTMLIFrameElement;
    const begun = new WeakSet();
    const begin = (view) => {
      const isBlank = (() => { try { return view?.location.href === 'about:blank'; } catch { return false; } })();
      if (!isBlank || begun.has(view.document)) return;
      begun.add(view.document);
      view.eval(${JSON.stringify(all)});
    };
    for (const name of ['contentWindow', 'contentDocument']) {
      const { get } = Object.getOwnPropertyDescriptor(prototype, name);
      Object.defineProperty(prototype, name, {
        configurable: true,
        get() {
          const found = get.call(this);
          begin(name === 'contentDocument' ? found?.defaultView : found);
          return found;
        },
      });
    }
  }`;
};
