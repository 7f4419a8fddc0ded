import type { BodyOut, ContractAnswer, priceEvaluateRoutes } from '@underlath/contract';
import { contractSchema, evaluateContract } from '@underlath/rules';
import { readByRules } from '../../shared/read-by-rules.ts';

/** Where a contract stands, for anyone who asks. It keeps nothing. */
export class ContractEvaluationService {
  /** @throws ProblemError `invalid-input` with a pointer for everything that does not fit */
  evaluate(body: BodyOut<typeof priceEvaluateRoutes.evaluateContract>): ContractAnswer {
    return evaluateContract(readByRules(contractSchema, body));
  }
}
