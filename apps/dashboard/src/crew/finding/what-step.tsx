import { checkEntries, checksByElement } from '@underlath/rules';
import { type CheckCard, say, type Text } from '@underlath/rules/kernel';
import { useEffect, useRef } from 'react';
import { CheckPicture } from '../../shared/drawing/check-picture.tsx';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { crewWords } from '../../shared/i18n/messages/crew.ts';
import { CrewFrame } from '../crew-frame.tsx';
import type { StepProps } from './step.ts';

/** A calculation that needs figures nobody measures on site is not offered here. */
const elements = checksByElement(checkEntries.filter(({ forCrew }) => forCrew !== false));

/** What it is, as pictures: first the part of the house, then its conditions; a tap on one goes on. */
export function WhatStep({ draft, change, go, back }: StepProps) {
  const t = useT(crewWords);
  const { locale } = useLocale();
  // The question number says which part is open, so that the phone's back button closes it. 0: none.
  const open = draft.step === 'what' ? elements[draft.question - 1] : undefined;
  const heading = useRef<HTMLHeadingElement>(null);
  const shown = useRef(open?.id);
  useEffect(() => {
    // Another set of pictures takes the focus, so that it is read aloud and begins at the top.
    if (shown.current !== open?.id) heading.current?.focus();
    shown.current = open?.id;
  }, [open?.id]);
  function pick(checkId: string) {
    // Measurements belong to their check: another kind starts empty.
    if (checkId !== draft.checkId) change({ checkId, inputs: {} });
    go('measure');
  }
  return (
    <CrewFrame back={back}>
      <div className="question">
        <h1 ref={heading} tabIndex={-1}>
          {open ? say(open.name, locale) : t('whatTitle')}
        </h1>
        <p className="soft">{t('whatLead')}</p>
      </div>
      <ul className="what-grid" key={open?.id}>
        {open
          ? open.checks.map((check) => (
              <Tile
                key={check.id}
                check={check}
                name={check.title}
                detail={say(check.question, locale)}
                chosen={draft.checkId === check.id}
                onPick={() => pick(check.id)}
              />
            ))
          : elements.map(({ id, name, checks: [first, ...others] }, at) => (
              <Tile
                key={id}
                check={first}
                name={others.length > 0 ? name : first.title}
                detail={
                  others.length > 0
                    ? [first, ...others].map((check) => say(check.title, locale)).join(', ')
                    : say(first.question, locale)
                }
                chosen={[first, ...others].some((check) => check.id === draft.checkId)}
                onPick={() => (others.length > 0 ? go('what', at + 1) : pick(first.id))}
              />
            ))}
      </ul>
    </CrewFrame>
  );
}

type TileProps = { check: CheckCard; name: Text; detail: string; chosen: boolean; onPick: () => void };

function Tile({ check, name, detail, chosen, onPick }: TileProps) {
  const { locale } = useLocale();
  return (
    <li>
      <button type="button" className="what" aria-pressed={chosen} onClick={onPick}>
        <CheckPicture checkId={check.id} />
        <b>{say(name, locale)}</b>
        <span>{detail}</span>
      </button>
    </li>
  );
}
