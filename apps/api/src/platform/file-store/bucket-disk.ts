import { S3Client } from '@aws-sdk/client-s3';
import { Disk } from 'flydrive';
import { S3Driver } from 'flydrive/drivers/s3';
import type { BucketStorage } from '../../config.ts';

/** A bucket of any S3-compatible store. Loaded only where one is configured: the SDK is large. */
export function createBucketDisk({ bucket, endpoint, region, pathStyle }: BucketStorage): Disk {
  const client = new S3Client({
    region,
    ...(endpoint && { endpoint }),
    forcePathStyle: pathStyle,
    // Some compatible stores keep the framing of the SDK's optional checksums as if it were data.
    requestChecksumCalculation: 'WHEN_REQUIRED',
    responseChecksumValidation: 'WHEN_REQUIRED',
    maxAttempts: 3,
    requestHandler: { connectionTimeout: 5_000, requestTimeout: 60_000 },
  });
  return new Disk(new S3Driver({ client, bucket, visibility: 'private', supportsACL: false }));
}
