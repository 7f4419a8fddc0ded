import { type KeyboardEvent, type ReactNode, useId, useRef } from 'react';
import './ui.css';

export type TabItem<V extends string> = { value: V; label: ReactNode; panel: ReactNode };

type TabsProps<V extends string> = {
  label: string;
  value: V;
  items: readonly TabItem<V>[];
  onChange: (value: V) => void;
};

/** Views of one thing. For places with an address of their own use links in a <nav className="strip">. */
export function Tabs<V extends string>({ label, value, items, onChange }: TabsProps<V>) {
  const id = useId();
  const list = useRef<HTMLDivElement>(null);
  const current = items.find((item) => item.value === value) ?? items[0];

  function move(event: KeyboardEvent) {
    const steps: Record<string, number> = { ArrowRight: 1, ArrowLeft: -1, Home: -Infinity, End: Infinity };
    const step = steps[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const at = items.findIndex((item) => item.value === value);
    const wrapped = Number.isFinite(step) ? (at + step + items.length) % items.length : step < 0 ? 0 : items.length - 1;
    const next = items[wrapped];
    if (!next) return;
    onChange(next.value);
    list.current?.querySelectorAll<HTMLElement>('[role=tab]')[wrapped]?.focus();
  }

  return (
    <div className="tabs">
      <div className="strip" role="tablist" aria-label={label} ref={list} onKeyDown={move}>
        {items.map((item) => (
          <button
            key={item.value}
            type="button"
            role="tab"
            id={`${id}-${item.value}`}
            aria-selected={item.value === value}
            aria-controls={`${id}-panel`}
            tabIndex={item.value === value ? 0 : -1}
            onClick={() => onChange(item.value)}
          >
            {item.label}
          </button>
        ))}
      </div>
      {current && (
        <div role="tabpanel" id={`${id}-panel`} aria-labelledby={`${id}-${current.value}`}>
          {current.panel}
        </div>
      )}
    </div>
  );
}
