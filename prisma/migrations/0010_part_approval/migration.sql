-- AlterTable
ALTER TABLE "decision" ADD COLUMN     "finding_ids" UUID[] DEFAULT ARRAY[]::UUID[];
