/** What an element's `theme` says of light and dark; without one, the page's own `color-scheme` counts. */
export const schemeText = `
  :host([theme='auto']) {
    color-scheme: light dark;
  }
  :host([theme='light']) {
    color-scheme: light;
  }
  :host([theme='dark']) {
    color-scheme: dark;
  }
`;

/**
 * The look of every element, as custom properties that a page may set on any of its elements or above:
 * each private name takes the page's `--croft-…` where there is one. Light or dark follows the page's own
 * `color-scheme`, unless the element's `theme` says otherwise.
 */
export const tokenText = `
  :host {
    --paper: var(--croft-paper, light-dark(#fcfbf7, #171c21));
    --raised: var(--croft-raised, light-dark(#ffffff, #20272e));
    --ink: var(--croft-ink, light-dark(#1d2a35, #ece8dd));
    --quiet: var(--croft-quiet-ink, light-dark(#53606a, #a9b3ba));
    --line: var(--croft-line, light-dark(#dcd8cb, #374149));
    --accent: var(--croft-accent, light-dark(#1c4f80, #9cc6ee));
    --on-accent: var(--croft-on-accent, light-dark(#ffffff, #0d2133));
    --plan: var(--croft-planning, light-dark(#f5efdc, #28261c));
    --plan-line: var(--croft-planning-line, light-dark(#c8ac5b, #8b7840));
    --own: var(--croft-own-mark, light-dark(#55794a, #98bd86));
    --problem: var(--croft-problem, light-dark(#9a2d17, #ff9f87));
    --problem-paper: var(--croft-problem-paper, light-dark(#fbebe5, #3a221d));
    /* Colours for marking cells, and a deeper tone of each for its sign. */
    --rose: light-dark(#f7d9dc, #5a2b33);
    --rose-deep: light-dark(#a83246, #ff9fb0);
    --amber: light-dark(#fae3b4, #54400f);
    --amber-deep: light-dark(#7d5200, #ffcf6b);
    --leaf: light-dark(#d9ebc9, #2f4a26);
    --leaf-deep: light-dark(#3f6d1f, #a8d98c);
    --sky: light-dark(#d3e5f5, #1f4260);
    --sky-deep: light-dark(#1f5f9a, #93c8f7);
    --plum: light-dark(#e8d9f0, #46305a);
    --plum-deep: light-dark(#74409a, #d9a8f5);
    --stone: light-dark(#e2e0d8, #40454a);
    --stone-deep: light-dark(#555752, #c4c6c4);
    --focus: var(--croft-focus, light-dark(#b25b00, #ffb658));
    --font: var(
      --croft-font,
      'Avenir Next',
      Avenir,
      Seravek,
      'Gill Sans Nova',
      'Segoe UI',
      Ubuntu,
      'Noto Sans',
      'Liberation Sans',
      sans-serif
    );
    --font-title: var(--croft-font-title, var(--font));
    --font-figures: var(--croft-font-figures, var(--font));
    --radius: var(--croft-radius, 6px);
    --height: var(--croft-sheet-height, min(74vh, 46rem));
  }
  ${schemeText}
  @media (prefers-contrast: more) {
    :host {
      --quiet: var(--ink);
      --line: color-mix(in srgb, var(--ink) 55%, var(--paper));
      --plan-line: color-mix(in srgb, var(--ink) 70%, var(--plan));
      --own: color-mix(in srgb, var(--croft-own-mark, light-dark(#55794a, #98bd86)) 60%, var(--ink));
      --focus: var(--ink);
    }
  }
  /* Drawings and marks take the reader's own colours too; of all else the browser sees to it. */
  @media (forced-colors: active) {
    :host {
      --paper: Canvas;
      --raised: Canvas;
      --ink: CanvasText;
      --quiet: CanvasText;
      --line: CanvasText;
      --accent: LinkText;
      --on-accent: Canvas;
      --plan: Canvas;
      --plan-line: CanvasText;
      --own: CanvasText;
      --problem: CanvasText;
      --problem-paper: Canvas;
      --focus: Highlight;
    }
  }
  /* Ink is dear and paper is white, whatever the page looks like. */
  @media print {
    :host {
      color-scheme: light !important;
      --paper: #fff;
      --raised: #fff;
      --ink: #000;
      --quiet: #333;
      --line: #999;
      --accent: #000;
      --on-accent: #fff;
      --plan: #f4f2ea;
      --plan-line: #777;
      --own: #444;
      --problem: #000;
      --problem-paper: #fff;
    }
  }
`;
