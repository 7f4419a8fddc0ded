import { createHash, generateKeyPairSync, randomBytes, sign } from 'node:crypto';

const sha256 = (data: Buffer | string): Buffer => createHash('sha256').update(data).digest();

/** What CBOR (RFC 8949) needs here: maps of short texts or small integers to the same, byte strings and maps. */
function cbor(value: number | string | Buffer | Map<number | string, unknown>): Buffer {
  const head = (major: number, size: number) =>
    size < 24
      ? Buffer.from([(major << 5) | size])
      : size < 256
        ? Buffer.from([(major << 5) | 24, size])
        : Buffer.from([(major << 5) | 25, size >> 8, size & 255]);
  if (typeof value === 'number') return value < 0 ? head(1, -1 - value) : head(0, value);
  if (typeof value === 'string') return Buffer.concat([head(3, Buffer.byteLength(value)), Buffer.from(value)]);
  if (Buffer.isBuffer(value)) return Buffer.concat([head(2, value.length), value]);
  const pairs = [...value].flatMap(([key, item]) => [cbor(key), cbor(item as Parameters<typeof cbor>[0])]);
  return Buffer.concat([head(5, value.size), ...pairs]);
}

const userPresent = 0x01;
const userVerified = 0x04;
const withCredential = 0x40;

/** A passkey in software (WebAuthn level 3, ES256, no attestation), written without the library that the server uses. */
export class SoftPasskey {
  readonly id = randomBytes(16);
  private readonly keys = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  private counter = 0;

  /** @param origin of the page that asks @param verifies whether the device asks for a finger or a PIN */
  constructor(
    private readonly origin: string,
    private readonly verifies = true,
  ) {}

  private frame() {
    const id = this.id.toString('base64url');
    return { id, rawId: id, type: 'public-key' as const, clientExtensionResults: {} };
  }

  private clientData(type: string, challenge: string): Buffer {
    return Buffer.from(JSON.stringify({ type, challenge, origin: this.origin, crossOrigin: false }));
  }

  private data(flags: number): Buffer {
    const count = Buffer.alloc(4);
    count.writeUInt32BE(this.counter);
    const all = flags | userPresent | (this.verifies ? userVerified : 0);
    return Buffer.concat([sha256(new URL(this.origin).hostname), Buffer.from([all]), count]);
  }

  make(challenge: string) {
    const { x = '', y = '' } = this.keys.publicKey.export({ format: 'jwk' });
    // COSE key (RFC 9052, 7): EC2, ES256, P-256, x, y.
    const key = cbor(
      new Map<number, number | Buffer>([
        [1, 2],
        [3, -7],
        [-1, 1],
        [-2, Buffer.from(x, 'base64url')],
        [-3, Buffer.from(y, 'base64url')],
      ]),
    );
    const length = Buffer.alloc(2);
    length.writeUInt16BE(this.id.length);
    const authData = Buffer.concat([this.data(withCredential), Buffer.alloc(16), length, this.id, key]);
    const attestation = cbor(
      new Map<string, string | Buffer | Map<string, unknown>>([
        ['fmt', 'none'],
        ['attStmt', new Map()],
        ['authData', authData],
      ]),
    );
    return {
      ...this.frame(),
      response: {
        clientDataJSON: this.clientData('webauthn.create', challenge).toString('base64url'),
        attestationObject: attestation.toString('base64url'),
      },
    };
  }

  answer(challenge: string) {
    this.counter += 1;
    const authenticatorData = this.data(0);
    const clientData = this.clientData('webauthn.get', challenge);
    const signature = sign('sha256', Buffer.concat([authenticatorData, sha256(clientData)]), this.keys.privateKey);
    return {
      ...this.frame(),
      response: {
        clientDataJSON: clientData.toString('base64url'),
        authenticatorData: authenticatorData.toString('base64url'),
        signature: signature.toString('base64url'),
      },
    };
  }
}
