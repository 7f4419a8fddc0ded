import type { Project, SeverityCounts } from '@underlath/contract';
import { dayOf } from '../../shared/days.ts';
import { toWord } from '../../shared/enum-words.ts';
import type { ProjectRecord } from './projects.repository.ts';

export const toDay = (date: Date | null): string | null => date && dayOf(date);
export const fromDay = (day: string | null): Date | null => (day === null ? null : new Date(`${day}T00:00:00Z`));

export function toProject({ companyId: _company, startOn, createdAt, updatedAt, ...row }: ProjectRecord): Project {
  return {
    ...row,
    clientLocale: row.clientLocale === 'es' ? 'es' : 'en',
    startOn: toDay(startOn),
    currency: 'USD',
    createdAt: createdAt.toISOString(),
    updatedAt: updatedAt.toISOString(),
  };
}

type Count = { projectId: string; severity: 'makeSafe' | 'engineer' | 'repair' | 'record' | null; _count: number };

export function toSeverityCounts(projectId: string, counts: Count[]): SeverityCounts {
  const open: SeverityCounts = { 'make-safe': 0, engineer: 0, repair: 0, record: 0 };
  for (const { projectId: of, severity, _count } of counts) {
    if (of === projectId && severity) open[toWord(severity)] = _count;
  }
  return open;
}
