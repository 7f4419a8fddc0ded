import type { FindingContext, FindingState, Locale } from '@underlath/contract';
import type { Clock } from '../../platform/clock.ts';
import type { Tx } from '../../platform/database/database.ts';
import { toJson } from '../../platform/database/json.ts';
import { newId } from '../../platform/ids.ts';
import { ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import { toEnum } from '../../shared/enum-words.ts';
import { eventTypes, judgmentHash } from '../../shared/record-events.ts';
import type { ChecksService } from '../checks/checks.service.ts';
import type { RecordsService } from '../records/records.service.ts';
import { contextAt, editionFor, stateAfterJudging } from './finding-rules.ts';
import * as findings from './findings.repository.ts';

export interface Measured {
  inputs: Record<string, unknown>;
  edition?: string | undefined;
  context: FindingContext;
}

/** A finding to be judged, its place and project, and how often it was judged before. */
export interface Judged {
  readonly id: string;
  readonly projectId: string;
  readonly checkId: string;
  readonly state: FindingState;
  readonly place: findings.JudgedPlace;
  readonly judgmentCount: number;
}

/** Judges a finding by its check and keeps everything that went in and came out. */
export class JudgingService {
  constructor(
    private readonly clock: Clock,
    private readonly checks: ChecksService,
    private readonly records: RecordsService,
  ) {}

  /** The caller's transaction holds the project's turn. @throws ProblemError `invalid-input`, `wrong-state` */
  async judge(tx: Tx, caller: Caller, finding: Judged, measured: Measured, locale: Locale): Promise<void> {
    const { companyId, actor, memberId } = caller;
    const { id: findingId, projectId, checkId, place } = finding;
    if (finding.state === 'withdrawn') {
      throw new ProblemError('wrong-state', 'The finding was withdrawn; record a new one instead.');
    }
    const { inputs } = measured;
    const context = contextAt(place, measured.context);
    const editions = [place.project.codeEdition, ...place.project.standardEditions];
    const edition = editionFor(checkId, measured.edition, editions, inputs);
    const outcome = this.checks.judge(checkId, { inputs, edition, context }, locale);
    const seq = finding.judgmentCount + 1;
    const judged = {
      seq,
      checkId,
      rulesVersion: outcome.rulesVersion,
      edition: outcome.edition,
      inputs,
      context,
      outcome,
    };
    const { verdict, severity } = outcome;
    const id = newId();
    await findings.insertJudgment(tx, {
      companyId,
      id,
      findingId,
      ...judged,
      inputs: toJson(inputs),
      context: { ...context },
      outcome: toJson(outcome),
      verdict: toEnum(verdict),
      severity: toEnum(severity),
      judgedAt: this.clock.now(),
      judgedById: memberId,
    });
    const state = stateAfterJudging(finding.state, outcome.missing);
    await findings.updateFinding(tx, companyId, findingId, {
      context: { ...context },
      verdict: toEnum(verdict),
      severity: toEnum(severity),
      state,
    });
    const sha256 = judgmentHash({ ...judged, verdict, severity });
    const data = {
      judgmentId: id,
      seq,
      sha256,
      verdict,
      severity,
      state,
      edition: judged.edition,
      rulesVersion: judged.rulesVersion,
    };
    const entry = { companyId, projectId, actor, subjectId: findingId };
    await this.records.append(tx, { ...entry, type: eventTypes.findingJudged, data });
  }
}
