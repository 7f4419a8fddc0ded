-- AlterTable
ALTER TABLE "load_path" ADD COLUMN     "floor_depth_in" DOUBLE PRECISION,
ADD COLUMN     "line_above_id" UUID;

-- CreateIndex
CREATE INDEX "load_path_company_id_line_above_id_idx" ON "load_path"("company_id", "line_above_id");

-- AddForeignKey
ALTER TABLE "load_path" ADD CONSTRAINT "load_path_company_id_line_above_id_fkey" FOREIGN KEY ("company_id", "line_above_id") REFERENCES "load_path"("company_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;
