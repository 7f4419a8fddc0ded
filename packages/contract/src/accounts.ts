import * as z from 'zod';
import { id, instant, personName, text, words } from './common.ts';
import { email, me, password } from './members.ts';
import { route } from './route.ts';

/** What a sign-in can go on with after the password. */
export const secondStep = z.enum(['code', 'passkey', 'recovery']);
const waiting = z.object({ needs: z.array(secondStep) });

/** Filed: no mail server is set up, the letter lies in the mail folder of the server, and nobody was mailed. */
export const delivery = z.enum(['mailed', 'filed']);
const letterOnItsWay = z.object({ delivery });

const secret = z.string().max(200);
const base64url = (max: number) =>
  z
    .string()
    .max(max)
    .regex(/^[\w-]*$/, 'must be base64url');

/** What a browser's passkey program asks and answers; its form is that of WebAuthn level 3 as JSON. */
const passkeyOptions = z.record(z.string(), z.unknown());
const credential = {
  id: base64url(2000),
  rawId: base64url(2000),
  type: z.literal('public-key'),
  clientExtensionResults: z.record(z.string(), z.unknown()),
  authenticatorAttachment: z.enum(['platform', 'cross-platform']).optional(),
};
export const passkeyAnswer = z.strictObject({
  ...credential,
  response: z.strictObject({
    clientDataJSON: base64url(8000),
    authenticatorData: base64url(8000),
    signature: base64url(4000),
    userHandle: base64url(200).optional(),
  }),
});
export const newPasskeyAnswer = z.strictObject({
  ...credential,
  response: z.strictObject({
    clientDataJSON: base64url(8000),
    attestationObject: base64url(20_000),
    authenticatorData: base64url(8000).optional(),
    transports: z.array(z.string().max(40)).max(10).optional(),
    publicKeyAlgorithm: z.int().optional(),
    publicKey: base64url(4000).optional(),
  }),
});

export const passkey = z.object({
  id,
  name: z.string(),
  createdAt: instant,
  lastUsedAt: instant.nullable(),
});
export const account = z.object({
  name: z.string(),
  email: z.string(),
  emailConfirmed: z.boolean(),
  /** An address that a link was mailed to and that does not count yet. */
  pendingEmail: z.string().nullable(),
  /** Whether an authenticator app is asked for its code. */
  codesOn: z.boolean(),
  passkeys: z.array(passkey),
  recoveryCodesLeft: z.int(),
  /** How letters leave this server. */
  delivery,
});
export const device = z.object({
  id,
  /** What it is, in words, from what its browser says of itself. */
  words: text,
  /** The network it was last signed in from, without the last part of the address. */
  network: z.string().nullable(),
  firstSeenAt: instant,
  /** Within a few minutes. */
  lastUsedAt: instant,
  isThisOne: z.boolean(),
});
/** Told once, when the first second step is set up. */
const withRecoveryCodes = z.object({ recoveryCodes: z.array(z.string()).nullable() });

export const accountRoutes = {
  signIn: route({
    name: 'signIn',
    method: 'POST',
    path: '/session',
    permission: 'public',
    summary: 'Sign in with e-mail and password; sets a cookie. 202: a second step is needed',
    body: z.strictObject({ email, password }),
    answers: { 200: me, 202: waiting },
  }),
  finishSignIn: route({
    name: 'finishSignIn',
    method: 'POST',
    path: '/session/second',
    permission: 'public',
    summary: 'The second step of a sign-in: a code, a recovery code or a passkey',
    body: z.union([
      z.strictObject({ code: z.string().max(20) }),
      z.strictObject({ recoveryCode: z.string().max(60) }),
      z.strictObject({ passkey: passkeyAnswer }),
    ]),
    answers: { 200: me },
  }),
  askPasskeyForSecondStep: route({
    name: 'askPasskeyForSecondStep',
    method: 'POST',
    path: '/session/second/passkey',
    permission: 'public',
    summary: 'What to ask a passkey for the second step of a sign-in',
    answers: { 200: passkeyOptions },
  }),
  askPasskey: route({
    name: 'askPasskey',
    method: 'POST',
    path: '/session/passkey/options',
    permission: 'public',
    summary: 'What to ask a passkey for signing in without a password',
    answers: { 200: passkeyOptions },
  }),
  signInWithPasskey: route({
    name: 'signInWithPasskey',
    method: 'POST',
    path: '/session/passkey',
    permission: 'public',
    summary: 'Sign in with a passkey that checked who holds it; sets a cookie',
    body: z.strictObject({ passkey: passkeyAnswer }),
    answers: { 200: me },
  }),
  signOut: route({
    name: 'signOut',
    method: 'DELETE',
    path: '/session',
    permission: 'session',
    summary: 'Sign out; the session ends on the server',
    answers: { 204: null },
  }),
  forgotPassword: route({
    name: 'forgotPassword',
    method: 'POST',
    path: '/account/forgotten',
    permission: 'public',
    summary: 'Mail a link to choose a new password; answers the same for any address',
    body: z.strictObject({ email }),
    answers: { 202: letterOnItsWay },
  }),
  resetPassword: route({
    name: 'resetPassword',
    method: 'POST',
    path: '/account/reset',
    permission: 'public',
    summary: 'Choose a new password with a mailed link; ends every session of the person',
    body: z.strictObject({ token: secret, password }),
    answers: { 204: null },
  }),
  confirmEmail: route({
    name: 'confirmEmail',
    method: 'POST',
    path: '/account/confirm',
    permission: 'public',
    summary: 'Confirm an e-mail address with a mailed link',
    body: z.strictObject({ token: secret }),
    answers: { 200: z.object({ email: z.string() }) },
  }),
  sendConfirmation: route({
    name: 'sendConfirmation',
    method: 'POST',
    path: '/account/confirmation',
    permission: 'session',
    summary: 'Mail the link that confirms the e-mail address again',
    answers: { 202: letterOnItsWay },
  }),
  getAccount: route({
    name: 'getAccount',
    method: 'GET',
    path: '/account',
    permission: 'session',
    summary: "The signed-in person's own account",
    answers: { 200: account },
  }),
  changeAccount: route({
    name: 'changeAccount',
    method: 'PATCH',
    path: '/account',
    permission: 'session',
    summary: 'Change the own name',
    body: z.strictObject({ name: personName }),
    answers: { 200: account },
  }),
  changeEmail: route({
    name: 'changeEmail',
    method: 'POST',
    path: '/account/email',
    permission: 'session',
    summary: 'Move to another e-mail address; it counts once its mailed link was opened',
    body: z.strictObject({ email, password }),
    answers: { 202: letterOnItsWay },
  }),
  changePassword: route({
    name: 'changePassword',
    method: 'POST',
    path: '/account/password',
    permission: 'session',
    summary: 'Change the password; ends every other session of the person',
    body: z.strictObject({ password, newPassword: password }),
    answers: { 204: null },
  }),
  beginCodes: route({
    name: 'beginCodes',
    method: 'POST',
    path: '/account/codes',
    permission: 'session',
    summary: 'Begin using codes of an authenticator app; the secret is shown once',
    body: z.strictObject({ password }),
    answers: { 201: z.object({ secret: z.string(), uri: z.string() }) },
  }),
  confirmCodes: route({
    name: 'confirmCodes',
    method: 'POST',
    path: '/account/codes/confirm',
    permission: 'session',
    summary: 'Show that the app makes the right codes; from then on one is asked for',
    body: z.strictObject({ code: z.string().max(20) }),
    answers: { 200: withRecoveryCodes },
  }),
  endCodes: route({
    name: 'endCodes',
    method: 'POST',
    path: '/account/codes/end',
    permission: 'session',
    summary: 'Stop asking for codes',
    body: z.strictObject({ password }),
    answers: { 204: null },
  }),
  newRecoveryCodes: route({
    name: 'newRecoveryCodes',
    method: 'POST',
    path: '/account/recovery-codes',
    permission: 'session',
    summary: 'New recovery codes, shown once; the earlier ones end',
    body: z.strictObject({ password }),
    answers: { 201: z.object({ recoveryCodes: z.array(z.string()) }) },
  }),
  beginPasskey: route({
    name: 'beginPasskey',
    method: 'POST',
    path: '/account/passkeys/options',
    permission: 'session',
    summary: 'What to ask the browser for making a passkey',
    body: z.strictObject({ password }),
    answers: { 200: passkeyOptions },
  }),
  addPasskey: route({
    name: 'addPasskey',
    method: 'POST',
    path: '/account/passkeys',
    permission: 'session',
    summary: 'Keep a passkey',
    body: z.strictObject({ name: words(80), passkey: newPasskeyAnswer }),
    answers: { 201: withRecoveryCodes },
  }),
  removePasskey: route({
    name: 'removePasskey',
    method: 'POST',
    path: '/account/passkeys/:passkeyId/remove',
    permission: 'session',
    summary: 'Remove a passkey',
    params: z.object({ passkeyId: id }),
    body: z.strictObject({ password }),
    answers: { 204: null },
  }),
  listDevices: route({
    name: 'listDevices',
    method: 'GET',
    path: '/account/devices',
    permission: 'session',
    summary: 'Where the person is signed in',
    answers: { 200: z.object({ items: z.array(device) }) },
  }),
  endDevice: route({
    name: 'endDevice',
    method: 'DELETE',
    path: '/account/devices/:deviceId',
    permission: 'session',
    summary: 'Sign one device out',
    params: z.object({ deviceId: id }),
    answers: { 204: null },
  }),
  endOtherDevices: route({
    name: 'endOtherDevices',
    method: 'DELETE',
    path: '/account/devices',
    permission: 'session',
    summary: 'Sign every other device out',
    answers: { 204: null },
  }),
} as const;

export type AccountView = z.infer<typeof account>;
export type Device = z.infer<typeof device>;
export type Passkey = z.infer<typeof passkey>;
export type PasskeyAnswer = z.infer<typeof passkeyAnswer>;
export type NewPasskeyAnswer = z.infer<typeof newPasskeyAnswer>;
export type SecondStep = z.infer<typeof secondStep>;
export type Delivery = z.infer<typeof delivery>;
