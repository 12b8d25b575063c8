/** The library that reads files by schemas, told once what it may not try. */
import { z } from 'zod';
import { util } from 'zod/v4/core';

// It tries whether it may make code out of text, and does without where a page's security policy refuses; but the
// refusal is reported to whoever keeps the page. Asked while it is told to do without, it answers no and remembers it.
// What it was told before comes back: other copies of it on a page read the same settings.
// Without a page there is no policy, and this copy may be everybody's.
if ('document' in globalThis) {
  const { jitless } = z.config();
  z.config({ jitless: true });
  // In one expression with what follows, or a bundler takes the question away.
  z.config({ jitless: jitless ?? util.allowsEval.value });
}

export { z };
