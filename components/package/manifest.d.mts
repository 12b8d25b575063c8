interface Described {
  readonly name: string;
  readonly description?: string;
  readonly default?: string;
  readonly type?: { readonly text: string };
}

interface Member extends Described {
  readonly kind: 'field' | 'method';
  readonly attribute?: string;
  readonly readonly?: boolean;
  readonly parameters?: readonly Described[];
  readonly return?: { readonly type: { readonly text: string } };
}

/** One element, as the W3C community group's schema for manifests has it. */
export interface ElementDeclaration {
  readonly name: string;
  readonly tagName: string;
  readonly description?: string;
  readonly attributes?: readonly Described[];
  readonly members?: readonly Member[];
  readonly events?: readonly Described[];
  readonly slots?: readonly Described[];
  readonly cssParts?: readonly Described[];
  readonly cssProperties?: readonly Described[];
}

export interface ElementsManifest {
  readonly modules: readonly {
    readonly path: string;
    readonly declarations: readonly ElementDeclaration[];
  }[];
}

export declare function elementsManifest(): Promise<ElementsManifest>;
