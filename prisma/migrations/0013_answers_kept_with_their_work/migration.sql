-- An answer is kept for repeats in the transaction of its work, so no row stands for a request that has not ended.
DELETE FROM "idempotency_key" WHERE "status" IS NULL OR "body" IS NULL;
ALTER TABLE "idempotency_key" ALTER COLUMN "status" SET NOT NULL,
ALTER COLUMN "body" SET NOT NULL;
