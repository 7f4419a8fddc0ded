import { readFileSync } from 'node:fs';

const checkEveryMs = 1_000;

/**
 * Calls `leave` when npm, or a shell between npm and us, is gone: killed without a chance to tell us, it would leave
 * this server holding port and database. Only Linux lists ancestors cheaply; elsewhere nothing is watched.
 */
export function watchStarter(leave: () => void): void {
  const ancestors = findNpmChain();
  if (ancestors.length === 0) return;
  const timer = setInterval(() => {
    if (ancestors.every(isRunning)) return;
    clearInterval(timer);
    leave();
  }, checkEveryMs);
  timer.unref();
}

/** Our ancestors up to the nearest npm, or none when npm did not start us. */
function findNpmChain(): number[] {
  const chain: number[] = [];
  for (let pid = process.ppid; pid > 1; ) {
    const parent = parentOf(pid);
    if (parent === undefined) return [];
    chain.push(pid);
    if (isNpm(pid)) return chain;
    pid = parent;
  }
  return [];
}

function parentOf(pid: number): number | undefined {
  const stat = readProc(pid, 'stat');
  // The name in parentheses may hold spaces; what follows it is: state, parent, …
  return stat === undefined ? undefined : Number(stat.slice(stat.lastIndexOf(')') + 2).split(' ')[1]);
}

function isNpm(pid: number): boolean {
  const words = readProc(pid, 'cmdline')?.split('\0') ?? [];
  return /^npm\b/.test(words[0] ?? '') || words.slice(0, 2).some((word) => /\/npm(-cli\.js)?$/.test(word));
}

function isRunning(pid: number): boolean {
  const stat = readProc(pid, 'stat');
  return stat !== undefined && !/^Z/.test(stat.slice(stat.lastIndexOf(')') + 2));
}

function readProc(pid: number, file: 'stat' | 'cmdline'): string | undefined {
  try {
    return readFileSync(`/proc/${pid}/${file}`, 'utf8');
  } catch {
    // The process is gone, or this system has no /proc.
    return undefined;
  }
}
