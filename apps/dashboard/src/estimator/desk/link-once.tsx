import { useId, useState } from 'react';
import { Button } from '../../shared/ui/button.tsx';

/** A secret that is shown this one time: the server keeps only its hash. */
export function LinkOnce({ link, what, label = 'The link' }: { link: string; what: string; label?: string }) {
  const id = useId();
  const [copied, setCopied] = useState<'no' | 'yes' | 'failed'>('no');
  const copy = () =>
    navigator.clipboard.writeText(link).then(
      () => setCopied('yes'),
      () => setCopied('failed'),
    );
  return (
    <div className="stack link-once">
      <p>
        <b>This is shown only now.</b> {what}
      </p>
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <div className="link-line">
        <input id={id} className="input" readOnly value={link} onFocus={(event) => event.target.select()} />
        <Button onClick={copy}>Copy</Button>
      </div>
      <p role="status">
        {copied === 'yes' && 'Copied.'}
        {copied === 'failed' && 'The browser did not allow copying. Select the text and copy it yourself.'}
      </p>
    </div>
  );
}
