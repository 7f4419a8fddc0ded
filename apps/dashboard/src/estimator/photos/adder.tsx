import { type PhotoStage, photoCaps } from '@underlath/contract';
import { useId, useState } from 'react';
import { Button, buttonClass } from '../../shared/ui/button.tsx';
import { Select } from '../../shared/ui/field.tsx';
import { Progress } from '../../shared/ui/progress.tsx';
import { FailState } from '../../shared/ui/states.tsx';
import { stageOptions } from '../desk/words.ts';
import { type Upload, useUploads } from './use-uploads.ts';
import './photos.css';

type PhotoAdderProps = {
  projectId: string;
  findingId?: string;
  locationId?: string;
  compact?: boolean;
  /** Told the id of each photo that is stored. */
  onDone: (photoId: string) => void;
};

/** Chooses files and sends them one after another, each with its own progress and its own fate. */
export function PhotoAdder({ projectId, findingId, locationId, compact, onDone }: PhotoAdderProps) {
  const inputId = useId();
  const [stage, setStage] = useState<PhotoStage>('found');
  const { uploads, add, cancel, retry, dismiss } = useUploads({ projectId, findingId, locationId, onDone });
  return (
    <div className={compact ? 'adder adder-compact' : 'adder'}>
      <div className="adder-line">
        <Select
          label="Stage"
          labelHidden={compact ?? false}
          options={stageOptions}
          value={stage}
          onChange={(value) => setStage(value as PhotoStage)}
          aria-label="Stage of the photos to add"
        />
        <label className={`${buttonClass('plain')} file-button`} htmlFor={inputId}>
          Add photos
        </label>
        <input
          id={inputId}
          className="hidden-text"
          type="file"
          multiple
          accept="image/jpeg,image/png,image/webp,image/heic,.heic"
          onChange={(event) => {
            add([...(event.target.files ?? [])], stage);
            event.target.value = '';
          }}
        />
      </div>
      {!compact && (
        <p className="soft small">
          JPEG, PNG, WebP or HEIC, up to {photoCaps.bytes / (1024 * 1024)} MB each. The original is kept untouched.
        </p>
      )}
      {uploads.length > 0 && (
        <ul className="uploads">
          {uploads.map((upload) => (
            <li key={upload.id}>
              <UploadLine upload={upload} onCancel={cancel} onRetry={retry} onDismiss={dismiss} />
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

type UploadLineProps = {
  upload: Upload;
  onCancel: (id: string) => void;
  onRetry: (id: string) => void;
  onDismiss: (id: string) => void;
};

function UploadLine({ upload, onCancel, onRetry, onDismiss }: UploadLineProps) {
  if (upload.state === 'sending' || upload.state === 'waiting') {
    return (
      <Progress
        label={upload.file.name}
        value={upload.state === 'sending' ? upload.share : 0}
        detail={upload.state === 'waiting' ? 'waits its turn' : upload.share >= 1 ? 'being stored' : undefined}
        onCancel={() => onCancel(upload.id)}
      />
    );
  }
  if (upload.state === 'failed' && upload.problem) {
    return (
      <div className="stack">
        <FailState problem={upload.problem} doing={upload.file.name} onRetry={() => onRetry(upload.id)} />
        <Button look="quiet" onClick={() => onDismiss(upload.id)}>
          Leave it out
        </Button>
      </div>
    );
  }
  return (
    <p className="upload-done">
      {upload.file.name}:{' '}
      {upload.state === 'duplicate' ? 'these same bytes are here already; the photo you have is used.' : 'stored.'}{' '}
      <Button look="quiet" onClick={() => onDismiss(upload.id)}>
        Hide
      </Button>
    </p>
  );
}
