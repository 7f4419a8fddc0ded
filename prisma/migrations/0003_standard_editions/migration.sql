-- AlterTable
ALTER TABLE "project" ADD COLUMN     "standard_editions" TEXT[] DEFAULT ARRAY[]::TEXT[];
