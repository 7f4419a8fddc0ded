import type { FastifyInstance } from 'fastify';

interface Options {
  publicUrl: string;
  /** Where to write about a weakness; undefined where whoever runs the server named nobody. */
  securityContact: string | undefined;
}

const dayMs = 86_400_000;
/** RFC 9116, 2.5.5 recommends less than a year. */
const goodForDays = 90;

/** What programs look for at fixed addresses: who may be told of a weakness (RFC 9116), and what not to index (RFC 9309). */
export async function wellKnown(app: FastifyInstance, { publicUrl, securityContact }: Options): Promise<void> {
  const options = { config: { permission: 'public' as const }, schema: { hide: true } };
  app.get('/.well-known/security.txt', options, async (_request, reply) => {
    const expires = new Date(Math.floor(Date.now() / dayMs) * dayMs + goodForDays * dayMs);
    return reply
      .type('text/plain; charset=utf-8')
      .header('cache-control', 'public, max-age=86400')
      .send(securityText(publicUrl, securityContact, expires));
  });
  app.get('/robots.txt', options, async (_request, reply) =>
    reply
      .type('text/plain; charset=utf-8')
      .header('cache-control', 'public, max-age=86400')
      // The open pages of the checks may be found; all else is somebody's work.
      .send('User-agent: *\nAllow: /checks\nAllow: /assets/\nDisallow: /\n'),
  );
}

function securityText(publicUrl: string, contact: string | undefined, expires: Date): string {
  const who = contact
    ? [`Contact: ${contact}`]
    : [
        '# Whoever runs this server has named nobody to write to (SECURITY_CONTACT).',
        '# The address below is the server itself: reach its company the way you know it.',
        `Contact: ${publicUrl}/`,
      ];
  return [
    ...who,
    `Expires: ${expires.toISOString()}`,
    'Preferred-Languages: en, es',
    `Canonical: ${publicUrl}/.well-known/security.txt`,
    '',
  ].join('\n');
}
