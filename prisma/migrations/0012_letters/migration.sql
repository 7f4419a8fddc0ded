-- A letter has an address of its own, and who opened it has a session of their own: the link's secret opens, it does not stay.

-- AlterTable
ALTER TABLE "client_link" ADD COLUMN     "letter_id" TEXT;

-- Links that were sent before get an address too; ten of Crockford's 32 signs, drawn anew for each row.
UPDATE "client_link" SET "letter_id" = (
  SELECT string_agg(substr('0123456789ABCDEFGHJKMNPQRSTVWXYZ', 1 + floor(random() * 32)::int, 1), '')
  FROM generate_series(1, 10) WHERE "client_link"."id" IS NOT NULL
);
ALTER TABLE "client_link" ALTER COLUMN "letter_id" SET NOT NULL;

-- AlterTable
ALTER TABLE "decision" ADD COLUMN     "letter_for" TEXT,
ADD COLUMN     "session_id" UUID;

-- CreateTable
CREATE TABLE "client_session" (
    "company_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "link_id" UUID NOT NULL,
    "token_hash" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "client_session_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "client_link_letter_id_key" ON "client_link"("letter_id");

-- CreateIndex
CREATE UNIQUE INDEX "client_session_token_hash_key" ON "client_session"("token_hash");

-- CreateIndex
CREATE INDEX "client_session_company_id_link_id_idx" ON "client_session"("company_id", "link_id");

-- AddForeignKey
ALTER TABLE "client_session" ADD CONSTRAINT "client_session_company_id_link_id_fkey" FOREIGN KEY ("company_id", "link_id") REFERENCES "client_link"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Fenced by its company, found by the hash of its token before the company is known; it is made and ended, nothing else.
ALTER TABLE "client_session" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "client_session" FORCE ROW LEVEL SECURITY;
CREATE POLICY company_fence ON "client_session" TO underlath_app USING (company_id = app_company()) WITH CHECK (company_id = app_company());
CREATE POLICY by_secret ON "client_session" FOR SELECT TO underlath_app USING (token_hash = app_token_hash());
DO $$ BEGIN EXECUTE format('CREATE POLICY keeper ON "client_session" TO %I USING (true) WITH CHECK (true)', current_user); END $$;
GRANT SELECT, INSERT ON "client_session" TO underlath_app;
GRANT UPDATE ("ended_at") ON "client_session" TO underlath_app;
