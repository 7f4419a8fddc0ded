import { type Device, routes } from '@underlath/contract';
import { problemOf } from '../api/errors.ts';
import { useChange, useRoute } from '../api/hooks.ts';
import { useLocale, useT } from '../i18n/locale.tsx';
import { accountWords } from '../i18n/messages/account.ts';
import { Button } from '../ui/button.tsx';
import { Stamp } from '../ui/stamp.tsx';
import { FailState, LoadingRows } from '../ui/states.tsx';
import { useAnnounce } from '../ui/status.tsx';

export function DevicesPart() {
  const t = useT(accountWords);
  const announce = useAnnounce();
  const devices = useRoute(routes.listDevices, {});
  const items = devices.data?.items ?? [];
  const endOthers = useChange(routes.endOtherDevices, {
    invalidates: [routes.listDevices],
    onDone: () => announce(t('ended')),
  });
  return (
    <section className="account-part stack">
      <h2>{t('devices')}</h2>
      {devices.isPending && <LoadingRows rows={2} />}
      {devices.error && (
        <FailState
          problem={problemOf(devices.error)}
          doing={t('devicesDoing')}
          onRetry={() => devices.refetch()}
          retrying={devices.isFetching}
        />
      )}
      <ul className="account-rows">
        {items.map((device) => (
          <DeviceRow key={device.id} device={device} />
        ))}
      </ul>
      {items.length > 1 && (
        <Button busy={endOthers.isPending} onClick={() => endOthers.mutate({})}>
          {t('endOthers')}
        </Button>
      )}
      {endOthers.error && <FailState problem={problemOf(endOthers.error)} doing={t('endDoing')} />}
    </section>
  );
}

function DeviceRow({ device }: { device: Device }) {
  const t = useT(accountWords);
  const announce = useAnnounce();
  const end = useChange(routes.endDevice, { invalidates: [routes.listDevices], onDone: () => announce(t('ended')) });
  const { locale } = useLocale();
  const { id, network, firstSeenAt, lastUsedAt, isThisOne } = device;
  const words = device.words[locale];
  return (
    <li>
      <span>
        <b>{words}</b>
        {isThisOne && ` (${t('thisOne')})`}
        <span className="soft">
          {network && `, ${t('network', { network })}`}, {t('firstSeen')} <Stamp at={firstSeenAt} />, {t('lastUsed')}{' '}
          <Stamp at={lastUsedAt} look="day-time" />
        </span>
      </span>
      {!isThisOne && (
        <Button look="quiet" busy={end.isPending} onClick={() => end.mutate({ params: { deviceId: id } })}>
          {t('endDevice')} <span className="hidden-text">{words}</span>
        </Button>
      )}
      {end.error && <FailState problem={problemOf(end.error)} doing={t('endDoing')} />}
    </li>
  );
}
