import {
  generateAuthenticationOptions,
  generateRegistrationOptions,
  type RegistrationResponseJSON,
  verifyAuthenticationResponse,
  verifyRegistrationResponse,
} from '@simplewebauthn/server';
import type { NewPasskeyAnswer, PasskeyAnswer } from '@underlath/contract';
import type { PasskeyRow, UserRow } from './accounts.repository.ts';

/** A new passkey, as it is kept. */
export interface NewPasskey {
  credentialId: string;
  publicKey: Uint8Array<ArrayBuffer>;
  counter: bigint;
  transports: string[];
}

export interface UsedPasskey {
  counter: number;
  /** The device asked for a finger, a face or a PIN, so that it stands for two factors. */
  isPersonVerified: boolean;
}

type Options = Record<string, unknown> & { challenge: string };

/** Questions to a browser's passkey program (WebAuthn) and the checking of its answers, for the address people type. */
export class Passkeys {
  private readonly origin: string;
  /** Passkeys belong to the name of the host. */
  private readonly host: string;

  constructor(publicUrl: string) {
    this.origin = new URL(publicUrl).origin;
    this.host = new URL(publicUrl).hostname;
  }

  async askForNew(user: UserRow, known: readonly PasskeyRow[]): Promise<Options> {
    const options = await generateRegistrationOptions({
      rpName: 'Underlath',
      rpID: this.host,
      userName: user.email,
      userDisplayName: user.name,
      userID: new TextEncoder().encode(user.id),
      attestationType: 'none',
      excludeCredentials: known.map(({ credentialId }) => ({ id: credentialId })),
      authenticatorSelection: { residentKey: 'preferred', userVerification: 'preferred' },
    });
    return { ...options };
  }

  /** Null when the answer is not one to this challenge. */
  async checkNew(answer: NewPasskeyAnswer, challenge: string): Promise<NewPasskey | null> {
    const checked = await verifyRegistrationResponse({
      response: answer as RegistrationResponseJSON,
      expectedChallenge: challenge,
      expectedOrigin: this.origin,
      expectedRPID: this.host,
      requireUserVerification: false,
    }).catch(() => null); // The library throws for each way an answer can be wrong; all of them are one refusal.
    if (!checked?.verified) return null;
    const { id, publicKey, counter, transports } = checked.registrationInfo.credential;
    return { credentialId: id, publicKey, counter: BigInt(counter), transports: transports ?? [] };
  }

  /** @param known of one person; none where the passkey says who it is */
  async ask(known: readonly PasskeyRow[] = []): Promise<Options> {
    const options = await generateAuthenticationOptions({
      rpID: this.host,
      allowCredentials: known.map(({ credentialId }) => ({ id: credentialId })),
      userVerification: known.length > 0 ? 'preferred' : 'required',
    });
    return { ...options };
  }

  /** Null when the answer is not this passkey's to this challenge. */
  async check(answer: PasskeyAnswer, challenge: string, passkey: PasskeyRow): Promise<UsedPasskey | null> {
    const checked = await verifyAuthenticationResponse({
      response: answer as Parameters<typeof verifyAuthenticationResponse>[0]['response'],
      expectedChallenge: challenge,
      expectedOrigin: this.origin,
      expectedRPID: this.host,
      credential: {
        id: passkey.credentialId,
        publicKey: new Uint8Array(passkey.publicKey),
        counter: Number(passkey.counter),
      },
      requireUserVerification: false,
    }).catch(() => null); // As above.
    if (!checked?.verified) return null;
    const { newCounter, userVerified } = checked.authenticationInfo;
    return { counter: newCounter, isPersonVerified: userVerified };
  }
}
