import { text } from '@underlath/rules';
import type { Tx } from '../platform/database/database.ts';
import { ProblemError } from '../platform/problem-error.ts';

/**
 * Before something is mailed to others in a member's name: whoever mails strangers has an address that reaches them.
 * @throws ProblemError `confirm-email-first`
 */
export async function assertEmailConfirmed(tx: Tx, companyId: string, memberId: string): Promise<void> {
  const [row] = await tx.$queryRaw<{ confirmed: boolean }[]>`
    select email_confirmed(user_id) as confirmed from member where company_id = ${companyId}::uuid and id = ${memberId}::uuid`;
  if (row?.confirmed) return;
  throw new ProblemError(
    'confirm-email-first',
    text(
      'Nothing is mailed to others in your name before you confirm your e-mail address. Open the link in the letter that was mailed to you, or have it sent again, and then try once more.',
      'No se envía nada a otros en su nombre antes de que confirme su correo. Abra el enlace de la carta que recibió, o pídala otra vez, e intente de nuevo.',
    ),
  );
}
