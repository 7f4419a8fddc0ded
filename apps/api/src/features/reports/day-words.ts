import type { ChangeOrderDocument } from '@underlath/contract';
import { type Text, text } from '@underlath/rules';

const working = text('Working days', 'Días hábiles');
const calendar = text('Calendar days', 'Días calendario');

/** How the contract of a change order counts its days. */
export const dayWords = ({ contract }: Pick<ChangeOrderDocument, 'contract'>): Text =>
  contract.dayKind === 'calendar' ? calendar : working;
