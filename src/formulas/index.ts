export {
  type ArgumentDeclaration,
  type ArgumentKind,
  type DayResult,
  type Explained,
  type FunctionContext,
  type FunctionDeclaration,
  type FunctionValue,
  GROUPS,
  type Group,
  signature,
} from './declare.js';
export { callFunction, explainFunction, problemText, stepsOfCall } from './evaluate-declared.js';
export { EXAMPLE_CONTEXT, type ExampleWorking, workingOfExample } from './example-working.js';
export { functionNamed, functions } from './functions.js';
export {
  type ArgumentHelp,
  type Completion,
  completionsFor,
  type FunctionHelp,
  type FunctionReference,
  helpOf,
  referenceOf,
} from './help.js';
export { type GivenValue, readArguments, type Scalar } from './read-arguments.js';
export { type StandardFunction, standardFunctions } from './standard.js';
export { exampleTexts, type TriedFunction, tryFunction } from './try-out.js';
