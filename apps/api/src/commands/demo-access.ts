import type { Role } from '@underlath/contract';

/** How to look around in the demo; what `seedDemo` of seed/index.ts answers. Everyone in it is invented. */
export interface DemoAccess {
  signIns: { role: Role; email: string; password: string }[];
  /** Path of one client link, `/c/<letter>#<secret>`. */
  clientPath: string;
}
