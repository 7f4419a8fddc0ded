-- An answer keeps what it did to the contract by the ledger, so that its paper says the same forever.
-- AlterTable
ALTER TABLE "decision" ADD COLUMN     "contract" JSONB;

-- The clock that tells the day at the site. Where a state has only one it is known; elsewhere it is asked for.
-- AlterTable
ALTER TABLE "project" ADD COLUMN     "time_zone" TEXT;

UPDATE "project" SET "time_zone" = CASE
  WHEN "site_state" IN ('AL', 'AR', 'IL', 'IA', 'LA', 'MN', 'MS', 'MO', 'OK', 'WI') THEN 'America/Chicago'
  WHEN "site_state" IN ('CA', 'WA') THEN 'America/Los_Angeles'
  WHEN "site_state" IN ('CO', 'MT', 'NM', 'UT', 'WY') THEN 'America/Denver'
  WHEN "site_state" IN ('CT', 'DE', 'DC', 'GA', 'ME', 'MD', 'MA', 'NH', 'NJ', 'NY', 'NC', 'OH', 'PA', 'RI', 'SC', 'VT', 'VA', 'WV') THEN 'America/New_York'
  WHEN "site_state" IN ('HI') THEN 'Pacific/Honolulu'
END;
