import { config } from 'zod';

// The page's policy forbids code made from text; the schema library would try it once and have it refused in the console.
config({ jitless: true });
