import type { PeopleEvent, PeopleEventType } from '@underlath/contract';

/** What happened, as the filter and the list say it. */
export const peopleEventWords: Record<PeopleEventType, string> = {
  'sign-in.good': 'Signed in',
  'sign-in.refused': 'Sign-in refused',
  'sign-in.ended': 'Signed out',
  'device.ended': 'Signed out on a device',
  'password.changed': 'Password changed',
  'password.reset': 'Password set anew by mail',
  'email.changed': 'E-mail address changed',
  'email.confirmed': 'E-mail address confirmed',
  'name.changed': 'Own name changed',
  'second-factor.on': 'Second step switched on',
  'second-factor.off': 'Second step switched off',
  'passkey.added': 'Passkey added',
  'passkey.removed': 'Passkey removed',
  'recovery-codes.made': 'Recovery codes made',
  'recovery-code.used': 'Recovery code used',
  'member.joined': 'Joined',
  'member.role-changed': 'Role changed',
  'member.renamed': 'Renamed',
  'member.removed': 'Removed',
  'invitation.sent': 'Invitation sent',
  'invitation.revoked': 'Invitation revoked',
  'invitation.accepted': 'Invitation accepted',
  'api-key.made': 'API key made',
  'api-key.changed': 'API key changed',
  'api-key.revoked': 'API key revoked',
  'company.opened': 'Company opened',
  'company.changed': 'Company details changed',
  'rights.changed': 'Rights changed',
  'cost-book.saved': 'Cost book saved',
};

/** `licenseNumber` as `license number`; what is no such name, as it is. */
const plain = (name: string): string =>
  /^[a-z]+([A-Z][a-z]*)+$/.test(name) ? name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`) : name;

/** The facts in one line: `from 192.0.2.x; why password`. */
export const factWords = ({ data }: Pick<PeopleEvent, 'data'>): string =>
  Object.entries(data)
    .map(
      ([name, value]) =>
        `${plain(name)} ${Array.isArray(value) ? value.map(String).map(plain).join(', ') : String(value ?? 'none')}`,
    )
    .join('; ');

/** Who did it, in a word where it was no member. */
export function actorWords({ kind, name }: PeopleEvent['actor']): string {
  if (kind === 'nobody') return 'Somebody who was not let in';
  return kind === 'api-key' ? `API key ${name}` : name;
}
