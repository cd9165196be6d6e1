package coldround.store;

import coldround.Postgres;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;

@QuarkusTest
@TestProfile(Postgres.class)
class PlainTableOnPostgresTest extends PlainTableTest {}
