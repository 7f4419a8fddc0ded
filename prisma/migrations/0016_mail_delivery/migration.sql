-- What became of each mail: handed to a mail server, only filed where none is set up, refused for good, or given up after the last try.
ALTER TYPE "mail_state" RENAME VALUE 'sent' TO 'handed-over';
ALTER TYPE "mail_state" RENAME VALUE 'failed' TO 'given-up';
ALTER TYPE "mail_state" ADD VALUE 'filed' BEFORE 'given-up';
ALTER TYPE "mail_state" ADD VALUE 'refused' BEFORE 'given-up';

-- CreateEnum
CREATE TYPE "mail_kind" AS ENUM ('offer', 'link-renewed', 'question-asked', 'question-answered', 'decision-told', 'decision-copy', 'notice', 'invitation');

-- AlterTable
ALTER TABLE "mail" RENAME COLUMN "failure" TO "server_words";
ALTER TABLE "mail" RENAME COLUMN "sent_at" TO "tried_at";
ALTER TABLE "mail" ADD COLUMN     "kind" "mail_kind",
ADD COLUMN     "locale" TEXT NOT NULL DEFAULT 'en',
ADD COLUMN     "from_name" TEXT,
ADD COLUMN     "reply_to" TEXT,
ADD COLUMN     "tries" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "replaced_at" TIMESTAMPTZ(3),
ADD COLUMN     "project_id" UUID,
ADD COLUMN     "change_order_id" UUID,
ADD COLUMN     "version" INTEGER,
ADD COLUMN     "question_id" UUID,
ADD COLUMN     "notice_id" UUID;

-- CreateIndex
CREATE INDEX "mail_company_id_project_id_idx" ON "mail"("company_id", "project_id");

-- CreateIndex
CREATE INDEX "mail_company_id_change_order_id_idx" ON "mail"("company_id", "change_order_id");

-- AddForeignKey
ALTER TABLE "mail" ADD CONSTRAINT "mail_company_id_project_id_fkey" FOREIGN KEY ("company_id", "project_id") REFERENCES "project"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "mail" ADD CONSTRAINT "mail_company_id_change_order_id_fkey" FOREIGN KEY ("company_id", "change_order_id") REFERENCES "change_order"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "mail" ADD CONSTRAINT "mail_company_id_question_id_fkey" FOREIGN KEY ("company_id", "question_id") REFERENCES "question"("company_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Notices knew their mail; now the mail knows its notice too. Of other mails from before it is not known what they were about.
UPDATE "mail" m SET "kind" = 'notice', "notice_id" = n."id", "project_id" = n."project_id"
FROM "notice" n WHERE n."company_id" = m."company_id" AND n."mail_id" = m."id";

-- A mail is part of the record: it may move on, never vanish.
REVOKE DELETE ON "mail" FROM underlath_app;
