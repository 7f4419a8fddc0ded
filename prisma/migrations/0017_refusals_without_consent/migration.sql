-- A refusal agrees to nothing, so it is asked no consent. What a client who declines says to have understood is kept in its words.
ALTER TABLE "decision" ALTER COLUMN "consent_id" DROP NOT NULL,
ALTER COLUMN "consent_text" DROP NOT NULL,
ADD COLUMN     "acknowledged" TEXT;
