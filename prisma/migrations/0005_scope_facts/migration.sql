-- AlterTable
ALTER TABLE "location" ADD COLUMN     "edge_nail_spacing_in" DOUBLE PRECISION,
ADD COLUMN     "existing" TEXT[] DEFAULT ARRAY[]::TEXT[],
ADD COLUMN     "field_nail_spacing_in" DOUBLE PRECISION;
