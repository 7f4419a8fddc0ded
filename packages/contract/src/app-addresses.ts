/** Where the addresses of the app begin. The server answers these with the app's page; what is no file and no address of the app is not found. */
export const appAddresses = [
  '',
  'sign-in',
  'start',
  'forgot',
  'new-password',
  'confirm-email',
  'invitation',
  'account',
  'checks',
  'crew',
  'projects',
  'new-project',
  'cost-book',
  'people',
  'people-log',
] as const;
