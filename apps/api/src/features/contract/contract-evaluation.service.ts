import type { BodyOut, ContractAnswer, priceEvaluateRoutes } from '@underlath/contract';
import { evaluateContract } from '@underlath/rules';

/** Where a contract stands, for anyone who asks. It keeps nothing. */
export class ContractEvaluationService {
  evaluate(body: BodyOut<typeof priceEvaluateRoutes.evaluateContract>): ContractAnswer {
    return evaluateContract(body);
  }
}
