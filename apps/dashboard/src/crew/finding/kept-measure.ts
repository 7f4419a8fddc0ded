import { useEffect } from 'react';
import type { Inputs } from '../../shared/measure/form.ts';

const keyOf = (findingId: string): string => `underlath.measure.${findingId}`;

/** Measurements of a finding that were not saved yet when the page was left, or null. */
export function readKept(findingId: string): Inputs | null {
  try {
    const kept = localStorage.getItem(keyOf(findingId));
    return kept ? (JSON.parse(kept) as Inputs) : null;
  } catch {
    return null; // Storage shut off or its content not ours: the form starts from the last measurement.
  }
}

/** Keeps what is typed on this device until it is saved. */
export function useKeptMeasure(findingId: string, inputs: Inputs): { forget: () => void } {
  useEffect(() => {
    try {
      localStorage.setItem(keyOf(findingId), JSON.stringify(inputs));
    } catch {
      // With storage shut off the measurements live as long as the page; saving still works.
    }
  }, [findingId, inputs]);
  return {
    forget: () => {
      try {
        localStorage.removeItem(keyOf(findingId));
      } catch {
        // Nothing was kept either.
      }
    },
  };
}
