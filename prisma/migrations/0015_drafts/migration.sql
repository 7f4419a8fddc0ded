-- AlterEnum
ALTER TYPE "change_order_state" ADD VALUE 'set-aside';

-- AlterTable
ALTER TABLE "change_order" ADD COLUMN     "marks" JSONB NOT NULL DEFAULT '[]',
ADD COLUMN     "spanish" JSONB NOT NULL DEFAULT '{}',
ADD COLUMN     "typed" TEXT[] DEFAULT ARRAY[]::TEXT[];

-- Nobody kept what was typed before, so all of it stays as it is.
UPDATE "change_order" SET "typed" = ARRAY['headline','found','why','ifNot','note','days'];
