/** Before each file of the API's tests on PostgreSQL: tells its test server where databases are to be had. */
import { inject } from 'vitest';

process.env.PLUGSIDE_TEST_DATABASES = inject('freshPostgresqlDatabase');
