/**
 * What stays in files of its own, by the modules that an `import()` names: grid and engine, under licences of their
 * own, and the words of another language, which most pages never speak.
 */
const APART: readonly { readonly name: string; readonly modules: RegExp }[] = [
  { name: 'grid', modules: /\/components\/grid\/(?:mount|first\/first-grid)\.ts$/ },
  { name: 'engine', modules: /\/src\/engine\/hyperformula-engine\.ts$/ },
  { name: 'german', modules: /\/src\/words\/german\.ts$/ },
];

interface Graph {
  getModuleInfo(id: string): {
    readonly importedIds: readonly string[];
    readonly dynamicallyImportedIds: readonly string[];
  } | null;
}

const isApart = (id: string): boolean => APART.some(({ modules }) => modules.test(id));

/** Ids of all modules that can be reached from one, however they are imported, but for what stays apart. */
function reached(from: string, graph: Graph, apart: string[] = []): ReadonlySet<string> {
  const found = new Set([from]);
  for (const id of found) {
    const module = graph.getModuleInfo(id);
    for (const to of [...(module?.importedIds ?? []), ...(module?.dynamicallyImportedIds ?? [])]) {
      if (isApart(to)) apart.push(to);
      else found.add(to);
    }
  }
  return found;
}

/** The name of the file that a module goes into: one for all that is read, one each for what stays apart. */
export function oneFileChunks(name: string, entry: string): (id: string, graph: Graph) => string | null {
  let files: ReadonlyMap<string, ReadonlySet<string>> | undefined;
  const filesOf = (graph: Graph): ReadonlyMap<string, ReadonlySet<string>> => {
    const apart: string[] = [];
    const all = new Map([[name, reached(entry, graph, apart)]]);
    for (const each of APART) {
      const roots = apart.filter((id) => each.modules.test(id));
      all.set(each.name, new Set(roots.flatMap((root) => [...reached(root, graph)])));
    }
    return all;
  };
  return (id, graph) => {
    files ??= filesOf(graph);
    for (const [file, modules] of files) if (modules.has(id)) return file;
    return null;
  };
}
