import { type NewPasskeyAnswer, type PasskeyAnswer, routes } from '@underlath/contract';
import { call } from '../api/call.ts';

/** The browser or the person did not give a passkey: canceled, timed out, or none for this address. */
export class NoPasskeyError extends Error {
  override readonly name = 'NoPasskeyError';
}

export const canUsePasskeys = (): boolean => 'PublicKeyCredential' in globalThis;

// Fetched when a passkey is asked for: most sign-ins need none of it.
const program = () => import('@simplewebauthn/browser');

const asNoPasskey = (error: unknown): never => {
  throw new NoPasskeyError('no passkey', { cause: error });
};

/** For signing in, alone or as the second step. */
export async function askForPasskey(as: 'alone' | 'second'): Promise<PasskeyAnswer> {
  const options = await call(as === 'alone' ? routes.askPasskey : routes.askPasskeyForSecondStep, {});
  const { startAuthentication } = await program();
  const optionsJSON = options as unknown as Parameters<typeof startAuthentication>[0]['optionsJSON'];
  return plain(await startAuthentication({ optionsJSON }).catch(asNoPasskey)) as PasskeyAnswer;
}

export async function makePasskey(password: string): Promise<NewPasskeyAnswer> {
  const options = await call(routes.beginPasskey, { body: { password } });
  const { startRegistration } = await program();
  const optionsJSON = options as unknown as Parameters<typeof startRegistration>[0]['optionsJSON'];
  return plain(await startRegistration({ optionsJSON }).catch(asNoPasskey)) as NewPasskeyAnswer;
}

/** Without the members that are absent, which the server would take for unknown ones. */
const plain = (answer: unknown): unknown => JSON.parse(JSON.stringify(answer));
