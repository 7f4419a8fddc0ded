import { vi } from 'vitest';

// Hundreds of people are made in the API tests; what a hash costs in earnest is held by `passwords.test.ts`. A hash says its
// own cost, so that checking one stays the real thing.
vi.mock('@node-rs/argon2', async (original) => {
  const real = await original<typeof import('@node-rs/argon2')>();
  const hash: typeof real.hash = (password, options) =>
    real.hash(password, { ...options, memoryCost: 1024, timeCost: 1 });
  return { ...real, hash };
});
