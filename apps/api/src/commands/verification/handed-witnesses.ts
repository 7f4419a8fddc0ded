import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { StartupError } from '../../platform/startup-error.ts';
import { manifestSchema } from '../backup/folder.ts';
import type { HandedWitness } from './verification.ts';

const form = /^([0-9a-f-]{36}):(\d{1,9}):([0-9a-f]{64})$/;

/**
 * The witnesses that a command line names: `--expect PROJECT:SEQ:HASH`, as often as wanted, and `--expect-file` with one such
 * line each, or the manifest.json of a backup.
 * @throws StartupError for what cannot be read
 */
export function readWitnesses(args: string[]): HandedWitness[] {
  const { expect = [], 'expect-file': files = [] } = readOptions(args);
  return [...expect.map((text) => readWitness(text, '--expect')), ...files.flatMap(readFile)];
}

function readOptions(args: string[]) {
  try {
    const options = {
      expect: { type: 'string', multiple: true },
      'expect-file': { type: 'string', multiple: true },
    } as const;
    return parseArgs({ args, options }).values;
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new StartupError(`verify-record takes --expect PROJECT:SEQ:HASH and --expect-file FILE. ${why}`, { cause });
  }
}

function readWitness(text: string, from: string): HandedWitness {
  const [, recordId, seq, hash] = form.exec(text.trim().toLowerCase()) ?? [];
  if (recordId && seq && hash) return { recordId, seq: Number(seq), hash };
  throw new StartupError(
    `${from} has "${text}"; a witness is PROJECT:SEQ:HASH, the project's id and what a letter prints of its record.`,
  );
}

function readFile(path: string): HandedWitness[] {
  const text = readText(path);
  if (text.trimStart().startsWith('{')) return readManifestHeads(path, text);
  const lines = text.split('\n').filter((line) => line.trim() !== '' && !line.startsWith('#'));
  return lines.map((line) => readWitness(line, path));
}

function readText(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (cause) {
    throw new StartupError(`${path} cannot be read, so nothing was compared with it.`, { cause });
  }
}

function readManifestHeads(path: string, text: string): HandedWitness[] {
  try {
    return manifestSchema.parse(JSON.parse(text)).heads.map(({ recordId, seq, hash }) => ({ recordId, seq, hash }));
  } catch (cause) {
    throw new StartupError(`${path} is no manifest of a backup that names where its records stood.`, { cause });
  }
}
