import type { Locale } from '@underlath/contract';

interface Letter {
  subject: string;
  text: string;
}

/** What happened to an account, told to the person it belongs to. */
export type AccountNews =
  | 'password-changed'
  | 'password-reset'
  | 'email-asked'
  | 'email-changed'
  | 'codes-on'
  | 'codes-off'
  | 'passkey-added'
  | 'passkey-removed'
  | 'recovery-codes-made'
  | 'recovery-code-used';

/** Minutes a link for a new password works; one that confirms an address works for days. */
export const resetMinutes = 30;
export const confirmDays = 3;

const paragraphs = (...lines: string[]): string => lines.join('\n\n');

export const confirmLetter = (link: string, locale: Locale): Letter =>
  locale === 'es'
    ? {
        subject: 'Confirme su correo electrónico',
        text: paragraphs(
          'Abra este enlace para confirmar que este correo es suyo:',
          link,
          `Sirve una vez, durante ${confirmDays} días. Si usted no lo pidió, no haga nada.`,
        ),
      }
    : {
        subject: 'Confirm your e-mail address',
        text: paragraphs(
          'Open this link to confirm that this address is yours:',
          link,
          `It works once, for ${confirmDays} days. If you did not ask for it, do nothing.`,
        ),
      };

export const resetLetter = (link: string, locale: Locale): Letter =>
  locale === 'es'
    ? {
        subject: 'Elija una contraseña nueva',
        text: paragraphs(
          'Abra este enlace para elegir una contraseña nueva:',
          link,
          `Sirve una vez, durante ${resetMinutes} minutos. Al usarlo se cierran todas sus sesiones.`,
          'Si usted no lo pidió, no haga nada: su contraseña sigue igual.',
        ),
      }
    : {
        subject: 'Choose a new password',
        text: paragraphs(
          'Open this link to choose a new password:',
          link,
          `It works once, for ${resetMinutes} minutes. Using it signs you out everywhere.`,
          'If you did not ask for it, do nothing: your password stays as it is.',
        ),
      };

const news: Readonly<Record<AccountNews, Readonly<Record<Locale, string>>>> = {
  'password-changed': { en: 'Your password was changed', es: 'Se cambió su contraseña' },
  'password-reset': {
    en: 'Your password was changed with a mailed link',
    es: 'Se cambió su contraseña con un enlace enviado por correo',
  },
  'email-asked': {
    en: 'Somebody signed in as you asked to move your account to another e-mail address',
    es: 'Alguien con su sesión pidió pasar su cuenta a otro correo electrónico',
  },
  'email-changed': {
    en: 'You sign in with another e-mail address now',
    es: 'Ahora entra con otro correo electrónico',
  },
  'codes-on': {
    en: 'Signing in now asks for a code of an authenticator app',
    es: 'Al entrar ahora se pide un código de una aplicación de autenticación',
  },
  'codes-off': {
    en: 'Signing in no longer asks for a code of an authenticator app',
    es: 'Al entrar ya no se pide un código de una aplicación de autenticación',
  },
  'passkey-added': { en: 'A passkey was added to your account', es: 'Se agregó una llave de acceso a su cuenta' },
  'passkey-removed': {
    en: 'A passkey was removed from your account',
    es: 'Se quitó una llave de acceso de su cuenta',
  },
  'recovery-codes-made': {
    en: 'New recovery codes were made; the earlier ones no longer work',
    es: 'Se hicieron códigos de recuperación nuevos; los anteriores ya no sirven',
  },
  'recovery-code-used': {
    en: 'Somebody signed in as you with a recovery code',
    es: 'Alguien entró a su cuenta con un código de recuperación',
  },
};

/** @param more one more sentence, such as the new address */
export function newsLetter(what: AccountNews, locale: Locale, more?: string): Letter {
  const subject = news[what][locale];
  const advice =
    locale === 'es'
      ? 'Si no fue usted, cambie su contraseña ahora mismo con "Olvidé mi contraseña" en la página para entrar, y avise al dueño de su empresa.'
      : 'If this was not you, change your password now with "Forgot the password" on the page for signing in, and tell the owner of your company.';
  return { subject, text: paragraphs(`${subject}.`, ...(more ? [more] : []), advice) };
}
