/** What is wrong with a quantity, in parts, so that a form can show each where it belongs. */
export interface QuantityProblem {
  /** Name of the input, as in the function's signature. */
  field: string;
  /** What was given. */
  value: unknown;
  /** The allowed range with its unit, in words. */
  allowed: string;
  /** What to do about it. */
  remedy: string;
}

/**
 * An input outside its allowed range. The message names the field, the value, the allowed range
 * and the remedy; the same four parts are fields.
 */
export class QuantityError extends RangeError implements QuantityProblem {
  readonly field: string;
  readonly value: unknown;
  readonly allowed: string;
  readonly remedy: string;

  constructor(problem: QuantityProblem) {
    const { field, value, allowed, remedy } = problem;
    super(`${field} is ${String(value)}; allowed: ${allowed}. ${remedy}`);
    this.name = 'QuantityError';
    this.field = field;
    this.value = value;
    this.allowed = allowed;
    this.remedy = remedy;
  }
}
