import { defineConfig } from 'vitest/config';

/** The tests of this package alone, as the mutation run uses them: each mutant meets the properties on fewer inputs. */
export default defineConfig({ test: { include: ['src/**/*.test.ts'], setupFiles: ['src/few-runs.setup.ts'] } });
