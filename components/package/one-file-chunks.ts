/** What stays in a file of its own, under a licence of its own, by the module that its `import()` names. */
const APART: Readonly<Record<string, string>> = {
  '/components/grid/mount.ts': 'grid',
  '/src/engine/hyperformula-engine.ts': 'engine',
};

interface Graph {
  getModuleInfo(id: string): {
    readonly isEntry: boolean;
    readonly importedIds: readonly string[];
    readonly dynamicallyImportedIds: readonly string[];
  } | null;
}

const isApart = (id: string): boolean => Object.keys(APART).some((end) => id.endsWith(end));

/** Ids of all modules that can be reached without the ones that stay apart, however they are imported. */
function together(entry: string, graph: Graph): ReadonlySet<string> {
  const found = new Set([entry]);
  for (const id of found) {
    const module = graph.getModuleInfo(id);
    for (const to of [...(module?.importedIds ?? []), ...(module?.dynamicallyImportedIds ?? [])])
      if (!isApart(to)) found.add(to);
  }
  return found;
}

/** The name of the file that a module goes into: one for all that is read, one each for grid and engine. */
export function oneFileChunks(name: string, entry: string): (id: string, graph: Graph) => string | null {
  let inside: ReadonlySet<string> | undefined;
  return (id, graph) => {
    inside ??= together(entry, graph);
    return inside.has(id) ? name : null;
  };
}

/** What the file of a dynamic import is called. */
export const apartName = (facade: string | null | undefined): string =>
  Object.entries(APART).find(([end]) => facade?.endsWith(end))?.[1] ?? '[name]';
