import type { Locale } from '@underlath/contract';

/** From `Accept-Language`: Spanish when asked for first, else English. */
export const preferredLocale = (header: string | undefined): Locale => (/^\s*es\b/i.test(header ?? '') ? 'es' : 'en');
