package coldround.fleet.edge;

import coldround.Postgres;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;

@QuarkusTest
@TestProfile(Postgres.class)
class RememberedUnitOnPostgresTest extends RememberedUnitTest {}
