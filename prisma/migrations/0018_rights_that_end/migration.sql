-- Keys end, say when they were last used, and may be for less than their role. Those made before get a year from the
-- day they were made, and a month from now at least.
CREATE TYPE "key_use" AS ENUM ('full', 'read', 'photos');

ALTER TABLE "api_key" ADD COLUMN     "expires_at" TIMESTAMPTZ(3),
ADD COLUMN     "last_used_at" TIMESTAMPTZ(3),
ADD COLUMN     "use" "key_use" NOT NULL DEFAULT 'full';
UPDATE "api_key" SET "expires_at" = greatest("created_at" + interval '1 year', now() + interval '30 days');
ALTER TABLE "api_key" ALTER COLUMN "expires_at" SET NOT NULL;

ALTER TABLE "member" ADD COLUMN     "version" INTEGER NOT NULL DEFAULT 1;

-- What an owner decides for the whole company.
ALTER TABLE "company" ADD COLUMN     "crew_sees_money" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "estimators_edit_cost_book" BOOLEAN NOT NULL DEFAULT false;

-- The letters of the last hour are counted before one more goes out.
CREATE INDEX "mail_company_id_created_at_idx" ON "mail"("company_id", "created_at");
