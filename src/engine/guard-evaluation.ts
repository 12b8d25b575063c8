import { CellError, ErrorType, type HyperFormula } from 'hyperformula';
import { localNumber, say } from '../words/index.js';
import { OURS } from './messages.js';

/** The most characters that a formula may give: as much as one could type into a cell, several times over. */
const MAX_TEXT = 100_000;

const tooLong = () =>
  new CellError(
    ErrorType.VALUE,
    OURS +
      say`The answer is a text of more than ${localNumber(MAX_TEXT.toLocaleString('en'))} characters. Repeat or join less.`,
  );

const tooDeep = () =>
  new CellError(
    ErrorType.VALUE,
    OURS +
      say`The formula is too long or too large to be worked out. Work out a part of it in a cell of its own and refer to that.`,
  );

interface Size {
  readonly width: number;
  readonly height: number;
  isScalar(): boolean;
}

/** What of the engine's inner parts is reached here. The engine is pinned to an exact version for this. */
interface Inside {
  readonly evaluator: { evaluateAstToCellValue(ast: unknown, state: unknown): unknown };
  readonly _crudOperations: {
    readonly operations: {
      readonly arraySizePredictor: { checkArraySize(ast: unknown, address: unknown): Size };
    };
  };
}

const oneCell: Size = { width: 1, height: 1, isScalar: () => true };

/** To be called once for every engine built: what a formula says stays a matter of its own cell. */
export function guardEvaluation(engine: HyperFormula): void {
  const { evaluator, _crudOperations } = engine as unknown as Inside;
  nothingThrown(evaluator);
  nothingSpreads(_crudOperations.operations.arraySizePredictor);
}

/**
 * A formula that would throw while it is worked out (a text of a thousand million characters, a sum of
 * thousands of terms that exhausts the stack) is an error of its cell. Otherwise the exception would end the
 * whole recalculation, and the cells after it would go on showing what they showed before.
 */
function nothingThrown(evaluator: Inside['evaluator']): void {
  const evaluate = evaluator.evaluateAstToCellValue.bind(evaluator);
  evaluator.evaluateAstToCellValue = (ast, state) => {
    try {
      const value = evaluate(ast, state);
      return typeof value === 'string' && value.length > MAX_TEXT ? tooLong() : value;
    } catch (error) {
      if (error instanceof RangeError) return /string/i.test(error.message) ? tooLong() : tooDeep();
      throw error;
    }
  };
}

/**
 * A formula that gives many values takes one cell all the same, and says so there. Otherwise it would spread
 * over cells that belong to the person and to planning columns, or not, by what came to be written first; and
 * the engine throws when rows are inserted into what was spread.
 */
function nothingSpreads(predictor: Inside['_crudOperations']['operations']['arraySizePredictor']): void {
  const sizeOf = predictor.checkArraySize.bind(predictor);
  predictor.checkArraySize = (ast, address) => {
    const size = sizeOf(ast, address);
    return size.width > 1 || size.height > 1 ? oneCell : size;
  };
}
