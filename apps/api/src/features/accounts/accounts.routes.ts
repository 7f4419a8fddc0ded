import { accountRoutes } from '@underlath/contract';
import type { FastifyInstance, FastifyReply } from 'fastify';
import type { Cookies } from '../../plugins/cookies.ts';
import { deviceOf } from '../../plugins/device.ts';
import { serve } from '../../plugins/serve.ts';
import type { Principal } from '../../shared/principals.ts';
import type { DevicesService } from './devices.service.ts';
import type { Own, PasswordsService } from './passwords.service.ts';
import type { ProfileService } from './profile.service.ts';
import type { SecondStepSettingsService } from './second-step-settings.service.ts';
import type { Session, SignInService } from './sign-in.service.ts';

interface Services {
  signIn: SignInService;
  passwords: PasswordsService;
  profile: ProfileService;
  secondStep: SecondStepSettingsService;
  devices: DevicesService;
  cookies: Cookies;
}

export function registerAccountsRoutes(app: FastifyInstance, services: Services): void {
  registerSignIn(app, services);
  registerPasswords(app, services);
  registerProfile(app, services);
  registerSecondStep(app, services);
  registerDevices(app, services);
}

function ownOf(principal: Principal): Own {
  if (principal.kind !== 'member') throw new Error('the permission "session" lets members through, and nobody else');
  return { userId: principal.userId, sessionId: principal.sessionId };
}

function registerSignIn(app: FastifyInstance, { signIn, devices, cookies }: Services): void {
  const begin = (reply: FastifyReply, { me, signedIn }: Session) => {
    cookies.clearTurn(reply);
    cookies.setSession(reply, signedIn.token, signedIn.expiresAt);
    cookies.setDevice(reply, me.member.email);
    return me;
  };

  serve(app, accountRoutes.signIn, async ({ body, request, reply }) => {
    const begun = await signIn.signIn(body, deviceOf(request), request.log);
    if ('me' in begun) return begin(reply, begun);
    cookies.setTurn(reply, begun.turn.token, begun.turn.expiresAt);
    reply.code(202);
    return { needs: begun.needs };
  });

  serve(app, accountRoutes.finishSignIn, async ({ body, locale, request, reply }) =>
    begin(reply, await signIn.finish(cookies.readTurn(request), body, deviceOf(request), locale)),
  );

  serve(app, accountRoutes.askPasskeyForSecondStep, ({ request }) => signIn.askForSecond(cookies.readTurn(request)));

  serve(app, accountRoutes.askPasskey, async ({ reply }) => {
    const { options, turn } = await signIn.askPasskey();
    cookies.setTurn(reply, turn.token, turn.expiresAt);
    return options;
  });

  serve(app, accountRoutes.signInWithPasskey, async ({ body, request, reply }) =>
    begin(reply, await signIn.signInWithPasskey(cookies.readTurn(request), body.passkey, deviceOf(request))),
  );

  serve(app, accountRoutes.signOut, async ({ principal, reply }) => {
    const own = ownOf(principal);
    await devices.end(own, own.sessionId);
    cookies.clearSession(reply);
    // Pictures that the browser kept for this person are nobody's after them.
    reply.header('clear-site-data', '"cache"');
  });
}

function registerPasswords(app: FastifyInstance, { passwords, cookies }: Services): void {
  serve(app, accountRoutes.changePassword, ({ body, principal, locale }) =>
    passwords.change(ownOf(principal), body, locale),
  );

  serve(app, accountRoutes.forgotPassword, ({ body, locale }) => passwords.forgotten(body.email, locale));

  serve(app, accountRoutes.resetPassword, async ({ body, locale, reply }) => {
    // Whoever read the mail is no stranger to the address.
    cookies.setDevice(reply, await passwords.reset(body, locale));
  });
}

function registerProfile(app: FastifyInstance, { profile }: Services): void {
  serve(app, accountRoutes.getAccount, ({ principal }) => profile.view(ownOf(principal).userId));

  serve(app, accountRoutes.changeAccount, ({ body, principal }) => profile.rename(ownOf(principal).userId, body.name));

  serve(app, accountRoutes.changeEmail, ({ body, principal, locale }) =>
    profile.changeEmail(ownOf(principal).userId, body, locale),
  );

  serve(app, accountRoutes.confirmEmail, ({ body, locale }) => profile.confirm(body.token, locale));

  serve(app, accountRoutes.sendConfirmation, ({ principal, locale }) =>
    profile.sendConfirmation(ownOf(principal).userId, locale),
  );
}

function registerSecondStep(app: FastifyInstance, { secondStep }: Services): void {
  serve(app, accountRoutes.beginCodes, ({ body, principal }) =>
    secondStep.beginCodes(ownOf(principal).userId, body.password),
  );

  serve(app, accountRoutes.confirmCodes, ({ body, principal, locale }) =>
    secondStep.confirmCodes(ownOf(principal).userId, body.code, locale),
  );

  serve(app, accountRoutes.endCodes, ({ body, principal, locale }) =>
    secondStep.endCodes(ownOf(principal).userId, body.password, locale),
  );

  serve(app, accountRoutes.newRecoveryCodes, ({ body, principal, locale }) =>
    secondStep.newRecoveryCodes(ownOf(principal).userId, body.password, locale),
  );

  serve(app, accountRoutes.beginPasskey, ({ body, principal }) =>
    secondStep.beginPasskey(ownOf(principal).userId, body.password),
  );

  serve(app, accountRoutes.addPasskey, ({ body, principal, locale }) =>
    secondStep.addPasskey(ownOf(principal).userId, body, locale),
  );

  serve(app, accountRoutes.removePasskey, ({ params, body, principal, locale }) =>
    secondStep.removePasskey(ownOf(principal).userId, params.passkeyId, body.password, locale),
  );
}

function registerDevices(app: FastifyInstance, { devices }: Services): void {
  serve(app, accountRoutes.listDevices, ({ principal }) => devices.list(ownOf(principal)));

  serve(app, accountRoutes.endDevice, ({ params, principal }) => devices.end(ownOf(principal), params.deviceId));

  serve(app, accountRoutes.endOtherDevices, ({ principal }) => devices.endOthers(ownOf(principal)));
}
