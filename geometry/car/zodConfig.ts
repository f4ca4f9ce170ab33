import * as z from 'zod/mini';

/**
 * Settings of the schema library, in a module of its own so that they hold before the first schema is made:
 * no code generation (it is forbidden under the window's content policy), and no sentences of the library's own,
 * so that a message found on a finding is always the one the schema gave.
 */
z.config({ jitless: true, localeError: () => '' });
